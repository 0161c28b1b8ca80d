/**
 * From ambient to cylinder: compressor, cooler, evaporating spray, and how far from knock that leaves the engine.
 * Pressures absolute [Pa], temperatures [K], everything in the charge per kg of dry air.
 *
 *   chargeAlong(path)        every station of the charge, drops and notes
 *   knockHeadroom(question)  spark and boost that give the same knock integral as a shown point, as a range
 */
import './notes.ts';
import './problems.ts';

export { alcoholOctane, blendOctane } from './blend-octane.ts';
export {
  airDensity,
  ambientAir,
  type ChargeAir,
  type PartsPerAir,
} from './charge-air.ts';
export * from './charge-along.ts';
export { compressorOutlet, compressorWork } from './compressor.ts';
export { cool } from './cooler.ts';
export { burntShare, type Crank, volumeRatio } from './crank.ts';
export * from './drop-slip.ts';
export * from './droplet.ts';
export { type Evaporated, evaporate, type Liquid, massOf } from './evaporation.ts';
export { explainIgnitionDelay, ignitionDelay } from './ignition-delay.ts';
export * from './knock-headroom.ts';
export { type KnockState, knockIntegral } from './knock-integral.ts';
export type { ChargeDefault } from './notes.ts';
export { evaporatedOfSpray, practiceDropDiameter } from './spray-cloud.ts';
export { type Trapped, type Trapping, trapped } from './trapped.ts';
