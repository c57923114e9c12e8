/**
 * Feeding. Shrinkage β is the share of the liquid's volume lost on freezing; per solid volume the demand is
 * β/(1 − β), not β.
 */
export function feedPerSolidVolume(shrinkage: number): number {
  return shrinkage / (1 - shrinkage);
}

export function liquidPerSolidVolume(shrinkage: number): number {
  return 1 / (1 - shrinkage);
}

/** Pure aluminium and Al-11.6Si: Magnusson & Arnberg, Metall. Mater. Trans. A 32 (2001) 2605, abstract read. */
const PURE_ALUMINIUM = 0.066;
const NEAR_EUTECTIC = { silicon: 0.116, shrinkage: 0.044 };

/** Freezing shrinkage of Al-Si by silicon content (share of mass), a straight line between the two measured. */
export function aluminiumSiliconShrinkage(silicon: number): number {
  return PURE_ALUMINIUM + ((NEAR_EUTECTIC.shrinkage - PURE_ALUMINIUM) * silicon) / NEAR_EUTECTIC.silicon;
}

/** Volume lost by liquid aluminium before it freezes, share a kelvin: about 0.1 % for 10 K, from dρ/dT = −0.3 kg/(m³ K), medium confidence. */
export const LIQUID_CONTRACTION = 1.3e-4;

/** What a feeder must cover: freezing and the cooling of the liquid by `superheat` [K]; share of the liquid volume. */
export function shrinkageToFeed(freezingShrinkage: number, superheat: number): number {
  return freezingShrinkage + LIQUID_CONTRACTION * Math.max(0, superheat);
}

/** Feeder volume for a casting of volume 1: ε V_f = α (V_f + 1). ε is the share of itself a feeder can give. Infinity when it cannot. */
export function feederVolumeRatio(shrinkage: number, efficiency: number): number {
  return efficiency > shrinkage ? shrinkage / (efficiency - shrinkage) : Number.POSITIVE_INFINITY;
}

/** Plain cylinder in sand 0.14, insulated 0.33 (Campbell and foundry handbooks, from memory). */
export const FEEDER_EFFICIENCY = { plain: 0.14, insulated: 0.33 } as const;
