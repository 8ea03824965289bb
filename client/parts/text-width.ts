/**
 * How wide a text will be, without asking a browser: what fits is decided in pure functions, tested without one, and
 * the same before and after the font has loaded.
 *
 * The numbers are the advances of Atkinson Hyperlegible Next at weights 400 and 700 in thousandths of an em, digits
 * tabular, read from the hmtx table of each instance of the font file. Kerning is left out: it makes text narrower
 * more often than wider. `tests/client-parts/in-the-browser.test.ts` compares them with what Chromium measures.
 */
export type Weight = 'regular' | 'strong'

/** Width in pixels of one line. Letters that the table lacks count as wide ones. */
export function textWidthPx(text: string, fontPx: number, weight: Weight = 'regular'): number {
  const table = ADVANCES[weight]
  let thousandths = 0
  for (const letter of text) thousandths += table.get(letter) ?? UNKNOWN
  return (thousandths * fontPx) / 1000
}

const UNKNOWN = 900

const LETTERS =
  ' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~' +
  'áéíóúüñçàèÁÉÍÓÚÜÑÇ¿¡–—−·…½¼°×€£’‘“”ºª'

// biome-ignore format: a table reads better in rows than one number a line
const REGULAR = [
  280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 632, 632, 632, 632, 632, 632, 632, 632,
  632, 632, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541, 824, 693, 714,
  592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564, 538, 314, 558,
  550, 252, 245, 492, 262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344, 237, 344, 555, 525,
  538, 252, 548, 540, 540, 550, 485, 525, 538, 626, 569, 392, 714, 690, 690, 693, 645, 450, 286, 504, 824, 606, 240, 670,
  820, 816, 352, 532, 664, 610, 236, 236, 399, 399, 380, 371,
]

// biome-ignore format: a table reads better in rows than one number a line
const STRONG = [
  312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440, 632, 632, 632, 632, 632, 632, 632, 632,
  632, 632, 272, 272, 569, 612, 569, 547, 781, 678, 643, 658, 688, 597, 566, 718, 701, 424, 561, 663, 552, 858, 717, 746,
  629, 756, 650, 610, 607, 686, 644, 886, 685, 650, 618, 340, 440, 344, 582, 400, 288, 552, 596, 510, 596, 563, 365, 593,
  571, 300, 259, 555, 318, 882, 571, 576, 596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381, 254, 381, 537, 552,
  563, 300, 576, 567, 567, 571, 510, 552, 563, 678, 597, 424, 746, 686, 686, 717, 658, 526, 303, 501, 832, 595, 294, 780,
  852, 846, 394, 536, 678, 634, 269, 269, 479, 479, 403, 390,
]

const ADVANCES: Readonly<Record<Weight, ReadonlyMap<string, number>>> = {
  regular: tableOf(REGULAR),
  strong: tableOf(STRONG),
}

function tableOf(advances: readonly number[]): ReadonlyMap<string, number> {
  return new Map([...LETTERS].map((letter, index) => [letter, advances[index] ?? UNKNOWN]))
}
