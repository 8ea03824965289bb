/**
 * The same look at many sizes, shops and languages takes long: the first of each row runs in every `npm test`, the others
 * with `npm run looks`, by this mark in their titles.
 */
export const lookMark = (index: number): string => (index === 0 ? '' : ' @look')
