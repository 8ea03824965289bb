import type { GuidePart, OpenWords } from './desk-open.ts'

export function esOpen(): OpenWords {
  return {
    connected: 'Pantallas de este local',
    title: 'Abrir una pantalla',
    lead: 'Elija qué es y cómo se llama; después apunte la cámara de una tableta o un teléfono al código.',
    which: 'Qué es',
    name: 'Cómo se llama',
    nameHint: {
      wall: 'p. ej. Pared de la olla',
      bench: 'p. ej. Línea del horno',
      counter: 'p. ej. Mostrador de adelante',
      desk: 'p. ej. Oficina',
    },
    address: 'Dirección de este local',
    addressKind: { name: 'por nombre', address: 'por número' },
    here: 'como se abrió esta página',
    hereHint: 'El nombre sigue sirviendo cuando cambia el número. Un aparato que no encuentra el nombre usa el número.',
    scan: 'Apunte la cámara aquí',
    code: (address) => `Código de ${address}`,
    openHere: 'Abrirla en este aparato',
    copy: 'Copiar la dirección',
    copied: 'Copiada',
    thisScreen: 'Esta pantalla',
    guides: {
      kiosk: {
        link: 'Una tableta o computadora que no muestra otra cosa',
        title: 'Un aparato que muestra una sola pantalla',
      },
      pedals: { link: 'Pedales y botones', title: 'Pedales y botones' },
      https: { link: 'Confiar en el https de este local', title: 'Confiar en el https de este local' },
    },
    guidesTitle: 'Dejarla puesta para siempre',
    back: 'Pantallas',
    kiosk: KIOSK,
    pedals: PEDALS,
    https: HTTPS,
    example: 'La dirección para esa pantalla, con su nombre:',
    pedalColumns: { key: 'tecla', station: 'puesto', acts: 'hace' },
  }
}

const KIOSK: readonly GuidePart[] = [
  {
    title: 'Antes de colgarla',
    isCaution: true,
    lines: [
      'Agua caliente, vapor y pisos calientes: cuélguela donde nadie tenga que pasar el brazo sobre la olla ni delante de la puerta del horno para tocarla, y fuera del vapor.',
      'Aparatos eléctricos cerca del agua: use un aparato, una fuente y un cable hechos para lugares mojados, en un circuito con protección diferencial. Lo decide y lo conecta quien tiene licencia.',
      'Ningún cable por el suelo ni sobre un filo por donde pasan bandejas. Un soporte que aguante un golpe con una bandeja llena.',
      'El tablero es una ayuda, no un dispositivo de seguridad: nada que pueda lastimar a alguien depende de que la pantalla esté encendida.',
    ],
  },
  {
    title: 'La dirección con la que arranca',
    hasAddress: true,
    lines: [
      'En un local que deja entrar con códigos, únase una vez en ese navegador con un código del escritorio; desde entonces entra solo.',
      'Déle una dirección fija con el nombre adentro: cada vez que arranca con ella, se llama así.',
      'Lo demás que se le ponga (puesto, tamaño, sonidos, pedales) queda en el aparato.',
    ],
  },
  {
    title: 'Una computadora, grande o de placa',
    lines: [
      'Haga que el sistema entre solo y abra un navegador a pantalla completa con la dirección. Los navegadores de la familia Chromium usan «--kiosk DIRECCIÓN», los de la familia Firefox también «--kiosk DIRECCIÓN»; ponga ese renglón en lo que el sistema abre al entrar.',
      'En Linux es una entrada de escritorio en ~/.config/autostart o un servicio de usuario de systemd; en otros sistemas, la lista de programas que se abren al entrar.',
      'Los sonidos necesitan un toque o una tecla después de arrancar, porque los navegadores callan las páginas que nadie tocó. Los de la familia Chromium aceptan «--autoplay-policy=no-user-gesture-required» para no pedirlo.',
      'Apague el protector de pantalla, el reposo de la pantalla y de la computadora, los avisos del sistema y las actualizaciones que la reinician de mañana.',
    ],
  },
  {
    title: 'Una tableta',
    lines: [
      'Abra la dirección en su navegador y póngala en la pantalla de inicio: abierta desde ahí no tiene barra de dirección.',
      'Fije el navegador a la pantalla: los sistemas lo llaman fijar pantalla, fijar aplicación, uso guiado o de una sola aplicación; está en seguridad o accesibilidad. Se sale con la clave que usted ponga.',
      'Ponga la pantalla en «nunca se apaga» mientras carga, y el brillo a mano: el brillo automático se oscurece en el local oscuro.',
      'Que cargue de una fuente hecha para quedar conectada, y mire la batería de vez en cuando: si se hincha, sale del local en seguida.',
    ],
  },
  {
    title: 'Reposo y brillo',
    lines: [
      'Por http simple una página no puede mantener encendida la pantalla: eso se pone en el aparato.',
      'Claro u oscuro, por la hora o como lo tenga el aparato, y el tamaño de letra se ponen en cada pantalla, en su configuración.',
      'Antes del amanecer elija un brillo con el que se lea la próxima acción desde donde está la gente, y no más; una pared se lee de 2 a 6 m.',
    ],
  },
  {
    title: 'Limpiar el cristal',
    lines: [
      'Toque primero «Limpiar el cristal»: por 15 segundos la pantalla no recibe toques, y eso termina solo.',
      'Un paño húmedo con un limpiador suave; no rocíe el aparato, nada de espátulas ni abrasivos.',
      'Lávese las manos antes de volver a la línea: una pantalla tocada con huevo o ajonjolí en las manos lo pasa.',
    ],
  },
]

const PEDALS: readonly GuidePart[] = [
  {
    title: 'Antes de pisar uno',
    isCaution: true,
    lines: [
      'Párese lejos del agua caliente y de la puerta del horno al pisarlo: cerca de ellas hacen falta los dos pies.',
      'Póngalo donde nadie tropiece ni pase un carro por encima. Un pedal y un cable hechos para suelos mojados, fuera del vapor; uno inalámbrico no tiene cable y sí una batería que cuidar.',
      'Un pedal dice que algo se hizo. No mueve ni apaga nada, y no es un paro de emergencia.',
    ],
  },
  {
    title: 'Qué sirve',
    lines: [
      'Sirve cualquier pedal, botón o tecla suelta que actúe como teclado (un «dispositivo de interfaz humana» USB o Bluetooth), sin programa propio.',
      'Ponga cada uno en una tecla que nadie escribe: F13 a F24 son lo mejor; una letra también sirve. Casi todos se ajustan una vez con la herramienta de quien los hace y lo guardan.',
      'Un pedal por puesto: el de la olla hace solo acciones de la olla, así un pie en el lugar equivocado no mueve nada en otra parte.',
    ],
  },
  {
    title: 'Atarlo a su puesto',
    hasStations: true,
    lines: [
      'Conéctelo al aparato que muestra la pared o la línea. Ahí, en la configuración, «Pedales y botones»: elija el puesto, «Aprender una tecla», y pise una vez.',
      'Una pisada hace la acción que su puesto muestra, cuando lleva medio segundo a la vista. Mantenido actúa una vez, y una segunda pisada dentro de un cuarto de segundo es la misma.',
      '«Ya voy» también puede tener una tecla: calla el sonido un momento y no hace nada más.',
    ],
  },
  {
    title: 'Cuando no hace nada',
    lines: [
      'Puede que no haya nada a la vista para su puesto: la barra lo dice al pisarlo.',
      'Una página de configuración o una lista encima de la línea frena los pedales: entonces no se puede leer lo que harían.',
      'La página tiene que tener el teclado: tóquela una vez al arrancar, o que la máquina arranque como quiosco.',
      'Lo que se hizo por error se deshace en la línea o aquí, en Hoy.',
    ],
  },
]

const HTTPS: readonly GuidePart[] = [
  {
    title: 'Para qué sirve',
    lines: [
      'Con https nadie en la red puede leer lo que pasa ni hacerse pasar por este local. El servidor hizo un certificado propio del local: a cada aparato se le dice una vez que confíe en él, y ya no avisa.',
      'Vale diez años. Un servidor que se instaló de nuevo hace otro: entonces repita esto.',
    ],
  },
  {
    title: 'En cada aparato, una vez',
    hasAuthority: true,
    lines: [
      'Abra la dirección de abajo en el aparato, que avisa esta única vez, o lleve el archivo en una memoria.',
      'Android: Ajustes, Seguridad, Cifrado y credenciales, Instalar un certificado, Certificado de CA.',
      'iPad y iPhone: instale el perfil; después Ajustes, General, Información, Ajustes de confianza de los certificados, y actívelo.',
      'Windows: abra el archivo, Instalar, Equipo local, Entidades de certificación raíz de confianza. macOS: ábralo en Acceso a Llaveros, Sistema, Confiar siempre.',
      'Linux: los navegadores tienen su propia lista: Ajustes, Certificados, Autoridades, Importar.',
      'Abra otra vez la dirección del local: ya no avisa.',
    ],
  },
  {
    title: 'Cuándo cambiar',
    isCaution: true,
    lines: [
      'Para un navegador, https es otra dirección: cada pantalla se une y se prepara otra vez.',
      'Cambie cuando no espere ningún toque. Los que esperaban en la dirección anterior quedan ahí hasta que vuelva el http sencillo.',
    ],
  },
]
