import type { DoorWords } from './door.ts'

const taps = (count: number) => (count === 1 ? '1 toque no salió' : `${count} toques no salieron`)

export const esDoor: DoorWords = {
  outside: {
    title: {
      'no-token': 'Esta pantalla no está unida a este local',
      forged: 'Este local no conoce esta pantalla',
      revoked: 'El escritorio sacó esta pantalla',
      expired: 'Esta pantalla faltó demasiado tiempo',
      moved: 'Esta pantalla ahora es otra',
    },
    how: 'Se une con seis cifras que el escritorio muestra en Pantallas.',
    unsent: (count) => `${taps(count)}. Quedan en este aparato y salen cuando vuelva a unirse.`,
    join: 'Unirse con un código',
    again: 'Cada medio minuto mira sola si ya puede entrar.',
  },
  join: {
    claimTitle: '¿De quién es este local?',
    claimLead:
      'Todavía no hay escritorio. Escriba las seis cifras de la terminal del servidor: este aparato será el escritorio.',
    claimHow:
      'Están en la ventana en la que se inició el local. El escritorio deja entrar a las demás pantallas y ve quién lo intentó.',
    title: 'Unirse a este local',
    lead: 'Escriba las seis cifras que el escritorio muestra en Pantallas, o apunte la cámara de este aparato a su código.',
    why: {
      'no-token': '',
      forged: 'Este local no conoce este aparato.',
      revoked: 'El escritorio sacó este aparato.',
      expired: 'Este aparato faltó tanto tiempo que tiene que unirse de nuevo.',
    },
    code: 'Seis cifras',
    key: 'Unirse',
    joining: 'Uniéndose…',
    wrong:
      'Ese código está mal, ya se usó o es muy viejo. Cada uno vale unos minutos y para un aparato: pida otro en el escritorio.',
    claimWrong: 'Ese código está mal o es muy viejo. Escriba el más nuevo de la ventana en la que se inició el local.',
    tooMany: (waitS) =>
      `De aquí llegaron demasiados códigos equivocados. Intente de nuevo ${waitS === null ? 'en unos minutos' : within(waitS)}.`,
    noContact:
      'Sin contacto con el local. ¿Está este aparato en la red del local? No se perdió nada: intente de nuevo.',
    failed: 'No funcionó.',
  },
  joined: {
    is: (name) => `Este aparato es ${name}`,
    going: 'Abriendo su página…',
    open: 'Abrir su página',
    leave: 'Salir de este local',
    leaveHow: 'Devuelve su llave; para entrar otra vez necesita un código nuevo del escritorio.',
    unsent: (count) => `${taps(count)} todavía; quedan en este aparato.`,
    leaveYes: 'Salir',
    leaveNo: 'Quedarse',
  },
  noContact: 'Sin contacto con el local. Buscando otra vez…',
  asking: 'Buscando el local…',
}

function within(seconds: number): string {
  return seconds < 100 ? `en ${seconds} s` : `en ${Math.ceil(seconds / 60)} min`
}
