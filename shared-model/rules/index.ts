import { accompanimentTransparent } from "./accompaniment-transparent.ts";
import { anachronism } from "./anachronism.ts";
import { bassGoesToTheHands } from "./bass-goes-to-the-hands.ts";
import { bassSixteenAndEight } from "./bass-sixteen-and-eight.ts";
import { boxStatesItsStart } from "./box-states-its-start.ts";
import { celesteOutOfChorus } from "./celeste-out-of-chorus.ts";
import { celesteWithItsPartner } from "./celeste-with-its-partner.ts";
import { choraleByPosition } from "./chorale-by-position.ts";
import { closeToPrescription } from "./close-to-prescription.ts";
import { compoundHasItsUnison } from "./compound-has-its-unison.ts";
import { continuoPlain } from "./continuo-plain.ts";
import { contrastOfColour } from "./contrast-of-colour.ts";
import { crescendoOrder } from "./crescendo-order.ts";
import { doublingInChorus } from "./doubling-in-chorus.ts";
import { dynamicMark } from "./dynamic-mark.ts";
import { eachHalfItsEight } from "./each-half-its-eight.ts";
import { echoSofterSameColour } from "./echo-softer-same-colour.ts";
import { everyKeySpeaks } from "./every-key-speaks.ts";
import { fewestStops } from "./fewest-stops.ts";
import { foundationPresent } from "./foundation-present.ts";
import { fourFootAlone } from "./four-foot-alone.ts";
import { frenchBassAtEight } from "./french-bass-at-eight.ts";
import { hymnLeadsSingers } from "./hymn-leads-singers.ts";
import { leftHandBassWithoutSixteen } from "./left-hand-bass-without-sixteen.ts";
import { lessUpperworkInLiveRoom } from "./less-upperwork-in-live-room.ts";
import { manualCouplerBySchool } from "./manual-coupler-by-school.ts";
import { mixtureCrownsPrincipals } from "./mixture-crowns-principals.ts";
import { mixtureNeedsUnison } from "./mixture-needs-unison.ts";
import { mutationOnItsFoundation } from "./mutation-on-its-foundation.ts";
import { mutationWithOctaveBetween } from "./mutation-with-octave-between.ts";
import { noGapInChorus } from "./no-gap-in-chorus.ts";
import { nothingIdle } from "./nothing-idle.ts";
import { octaveShift } from "./octave-shift.ts";
import { oldCompass } from "./old-compass.ts";
import { oneKeyboardOneSound } from "./one-keyboard-one-sound.ts";
import { oneKeyboardTwoColours } from "./one-keyboard-two-colours.ts";
import { pedalCouplerBySchool } from "./pedal-coupler-by-school.ts";
import { pedalEightByCoupler } from "./pedal-eight-by-coupler.ts";
import { pedalHidesNoSolo } from "./pedal-hides-no-solo.ts";
import { pedalMelodyAtItsPitch } from "./pedal-melody-at-its-pitch.ts";
import { pedalWeight } from "./pedal-weight.ts";
import { reedOnItsGround } from "./reed-on-its-ground.ts";
import { reedsInPlenum } from "./reeds-in-plenum.ts";
import type { Rule } from "./rule.ts";
import { secondChorusLighter } from "./second-chorus-lighter.ts";
import { sharedPipesBetweenParts } from "./shared-pipes-between-parts.ts";
import { sharedPipesRob } from "./shared-pipes-rob.ts";
import { shortStopNamed } from "./short-stop-named.ts";
import { sixteenInManual } from "./sixteen-in-manual.ts";
import { sixteenReedNotAlone } from "./sixteen-reed-not-alone.ts";
import { smallOrganWays } from "./small-organ-ways.ts";
import { softSixteenUnderSoftHands } from "./soft-sixteen-under-soft-hands.ts";
import { soloClear } from "./solo-clear.ts";
import { soloNotOverbearing } from "./solo-not-overbearing.ts";
import { stepsAudible } from "./steps-audible.ts";
import { stopOff } from "./stop-off.ts";
import { stringsBySchool } from "./strings-by-school.ts";
import { thirtyTwoNeedsSixteen } from "./thirty-two-needs-sixteen.ts";
import { tierceCompoundOnGround } from "./tierce-compound-on-ground.ts";
import { tierceInPlenum } from "./tierce-in-plenum.ts";
import { tremulantShakesAll } from "./tremulant-shakes-all.ts";
import { tremulantSuits } from "./tremulant-suits.ts";
import { trioVoicesEqual } from "./trio-voices-equal.ts";
import { tuningAndWeather } from "./tuning-and-weather.ts";
import { underSoloReeds } from "./under-solo-reeds.ts";
import { underVoices } from "./under-voices.ts";
import { upperMutationOnFullGround } from "./upper-mutation-on-full-ground.ts";
import { variationsDiffer } from "./variations-differ.ts";
import { versesGrow } from "./verses-grow.ts";
import { windForManyBasses } from "./wind-for-many-basses.ts";

/** Every convention of the trade that has a say, alphabetically. */
export const RULES: readonly Rule[] = [
  accompanimentTransparent,
  anachronism,
  bassGoesToTheHands,
  bassSixteenAndEight,
  boxStatesItsStart,
  celesteOutOfChorus,
  celesteWithItsPartner,
  choraleByPosition,
  closeToPrescription,
  compoundHasItsUnison,
  continuoPlain,
  contrastOfColour,
  crescendoOrder,
  doublingInChorus,
  dynamicMark,
  eachHalfItsEight,
  echoSofterSameColour,
  everyKeySpeaks,
  fewestStops,
  foundationPresent,
  fourFootAlone,
  frenchBassAtEight,
  hymnLeadsSingers,
  leftHandBassWithoutSixteen,
  lessUpperworkInLiveRoom,
  manualCouplerBySchool,
  mixtureCrownsPrincipals,
  mixtureNeedsUnison,
  mutationOnItsFoundation,
  mutationWithOctaveBetween,
  noGapInChorus,
  nothingIdle,
  octaveShift,
  oldCompass,
  oneKeyboardOneSound,
  oneKeyboardTwoColours,
  pedalCouplerBySchool,
  pedalEightByCoupler,
  pedalHidesNoSolo,
  pedalMelodyAtItsPitch,
  pedalWeight,
  reedOnItsGround,
  reedsInPlenum,
  secondChorusLighter,
  sharedPipesBetweenParts,
  sharedPipesRob,
  shortStopNamed,
  sixteenInManual,
  sixteenReedNotAlone,
  smallOrganWays,
  softSixteenUnderSoftHands,
  soloClear,
  soloNotOverbearing,
  stepsAudible,
  stopOff,
  stringsBySchool,
  thirtyTwoNeedsSixteen,
  tierceCompoundOnGround,
  tierceInPlenum,
  tremulantShakesAll,
  tremulantSuits,
  trioVoicesEqual,
  tuningAndWeather,
  underSoloReeds,
  underVoices,
  upperMutationOnFullGround,
  variationsDiffer,
  versesGrow,
  windForManyBasses,
];
