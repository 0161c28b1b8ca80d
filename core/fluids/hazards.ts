/**
 * What the fluids can do to people, as published. Facts for cautions at the point of decision; none of them
 * makes anything safe.
 */
export const hazards = {
  methanol: {
    /** Eight hours [ppm by volume]: OSHA 29 CFR 1910.1000 table Z-1. */
    permissibleExposure_ppm: 200,
    /** Eight hours, fifteen minutes; taken up through the skin: NIOSH. */
    recommendedExposure_ppm: 200,
    shortTermExposure_ppm: 250,
    isTakenUpThroughSkin: true,
    /** NIOSH, from memory: a tenth of the lower flammability limit. */
    immediatelyDangerous_ppm: 6000,
    /** Mean and range: National Research Council, Prudent Practices. Smell gives no warning before the limit. */
    odourMean_ppm: 160,
    odourRange_ppm: [4, 6000],
    /** Reported, by mouth [mL]: National Research Council, Prudent Practices. */
    lethalDose_mL: [60, 250],
    /** In air [% by volume]: NFPA 497, IEC 60079-20-1. */
    flammable_percent: [6.0, 36],
    /** NFPA 497 and IEC 60079-20-1 [C]; the method decides, the lower counts. */
    autoignition_C: [385, 440],
    /** 49 CFR 172.101. */
    transport: { un: 'UN1230', domestic: 'Class 3, PG II', international: 'Class 3 (6.1), PG II' },
  },
  ethanol: {
    flammable_percent: [3.1, 19],
    autoignition_C: [363, 400],
    /** 49 CFR 172.101, from memory. */
    transport: { un: 'UN1170', class: '3', packingGroups: ['II', 'III'] },
  },
  transportRules: {
    /** 49 CFR 173.120(a), present figure from memory [C]. */
    class3FlashPoint_C: 60,
    /** 49 CFR 173.120(a)(5): water-miscible solutions outside class 3. */
    waterRich: { flashPointAbove_C: 35, waterMassAbove_percent: 90 },
    /** 49 CFR 173.150(e): alcohols without another hazard; PHMSA 16-0079 denies it to methanol. */
    aqueousAlcohol: { alcoholVolumeMost_percent: 24, waterLeast_percent: 50 },
  },
} as const;
