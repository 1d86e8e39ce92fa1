/** A small organ as a person writes it down. */
export const SMALL_ORGAN = `registrant: instrument/1
name: St. Anna, Lehmkuhle
divisions:
  - name: Hauptwerk
    kind: manual
    keyboard: 1
    stops:
      - Principal 8
      - Gedackt 8
      - Octave 4
      - Nasat 2 2/3
      - Mixtur IV
      - Dulzian 8 bass
      - Dulzian 8 treble
  - name: Oberwerk
    kind: manual
    keyboard: 2
    enclosed: true
    stops:
      - Rohrflöte 8
      - Flöte 4
      - Sesquialtera II
      - Oboe 8
  - name: Pedal
    kind: pedal
    stops:
      - Subbass 16
      - Octavbass 8
couplers:
  - Oberwerk to Hauptwerk
  - Hauptwerk to Pedal
tremulants: [Oberwerk]
`;

/** A registration drawn on it by a good hand. */
export const GOOD_REGISTRATION = `registrant: registration/1
texture: melody-over-accompaniment
keyboards: {melody: Oberwerk, accompaniment: Hauptwerk, bass: Pedal}
drawn: {Oberwerk: [Rohrflöte, Sesquialtera, Flöte 4], Hauptwerk: [Gedackt 8], Pedal: [Subbass 16, Octavbass]}
`;
