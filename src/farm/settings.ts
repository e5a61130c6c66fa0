/**
 * Starting values of the model that belong to no crop and no cover. Each stands in data/settings.json with unit,
 * source and standing; a farm may set those that weigh or bound its plan.
 */
export interface Settings {
  /** Hours on the farm's clock. [h] */
  readonly morningWalk: number;
  readonly eveningWalk: number;
  /** Wind at 10 m where none is known, and the part of it that blows at 2 m, where covers were measured. [m/s], [1] */
  readonly wind: number;
  readonly windAtCrop: number;
  /** Wind at 2 m in which heat and frost are judged. [m/s] */
  readonly calmWind: number;
  /** Wind above which no cloth is put on. [m/s] */
  readonly windLimit: number;
  readonly changesPerWeek: number;
  /** What changing one instruction of a sheet given out costs: telling everyone, and a mistake now and then. [min] */
  readonly changedInstruction: number;
  readonly layers: number;
  /** Days looked at beyond the plan, so that a bed not ready in it is still worth keeping. [d] */
  readonly lookout: number;
  /** Factor on the odds of damage. [1] */
  readonly caution: number;
  /** Days below the light floor allowed to shade cloth. [d] */
  readonly dimDays: number;
  /** Share of the price just below the window, and the share of the smallest size at which it has fallen to nothing. [1] */
  readonly shareJustBelow: number;
  readonly nothingBelow: number;
  /** Share of the price above the window, and the multiple of the largest size at which it ends. [1] */
  readonly shareBraising: number;
  readonly braisingMost: number;
  /** Share of a price earned at a market other than the one a succession is meant for. [1] */
  readonly otherMarketShare: number;
  /** Share of a price earned beyond what a stall sells at the full price, and by what is left of a mix's crop and sold alone. [1] */
  readonly stallBeyond: number;
  readonly looseShare: number;
  /** Cost of what an order lacks, beside the price not earned, as a share of that price. [1] */
  readonly orderShort: number;
  /** What a bed that is cut and grows again brings later, as a share of a full cut at its price; lost when its roots die. [1] */
  readonly regrowthWorth: number;
  /** What a lost bed still counts: share of its full worth for each unit of the logarithm of its chance to come through. [1] */
  readonly neverLost: number;
  /** Share of worth lost for each day a bed is held longer, because the next sowing waits. [1/d] */
  readonly bedDay: number;
  /** Quality lost a day when cut and kept cold at about 1 °C. [1/d] */
  readonly holdLoss: number;
  /** Worth lost to heat per degree-hour above the crop's quality limit, and the most it may take. [1/(°C·h)], [1] */
  readonly heatStress: number;
  readonly stressMost: number;
  /** Quality lost by leaves cut wet from under row cover, and the rain from noon of the day before that makes it wet. [1], [mm] */
  readonly wetCutLoss: number;
  readonly wetRain: number;
  /** Falls on a day of which a forecast says that it is wet and no amount. [mm/d] */
  readonly wetWord: number;
  /** Air at or below which snow falls, and what of it melts for each degree of the day's mean above 0 °C, as water. [°C], [mm/(°C·d)] */
  readonly rainSnow: number;
  readonly snowMelt: number;
  /** As water, from which cloth lies under snow; depth of new snow over its depth as water. [mm], [1] */
  readonly snowLies: number;
  readonly newSnow: number;
  /** Width of the passage from sound to damaged leaves, forecast error left out. [°C] */
  readonly damageWidth: number;
  /** Error of a forecast low or high on the day itself, its growth a day, and its ceiling; standard deviation. [°C] */
  readonly forecastSpread: number;
  readonly forecastSpreadPerDay: number;
  readonly forecastSpreadMost: number;
  /** Share of a temperature's departure, a forecast's error or a day's from the usual, that is left on the next day; and its correlation between low and high. [1] */
  readonly dayToDay: number;
  readonly lowToHigh: number;
  /** Doubt about the level of the last known days where they are carried on; standard deviation. [°C] */
  readonly carriedLevel: number;
  /** How many kept forecasts the stated error counts as, against what followed them. [1] */
  readonly errorWeight: number;
  /** Spread of what a cover warms, and of what shade cools; standard deviations of logarithms. [1] */
  readonly warmthSpread: number;
  readonly shadeSpread: number;
  /** Weathers ahead that are followed, and the seed that fixes them. [1] */
  readonly members: number;
  readonly seed: number;
  /** Weight as this power of leaf length. [1] */
  readonly weightExponent: number;
  /** Spread of what a bed yields at full size: of its crop on a farm, and of one bed beside the next; standard deviations of logarithms. [1] */
  readonly yieldSpread: number;
  readonly bedSpread: number;
  /** Light at which yields are stated; more adds nothing. [mol/m²/d] */
  readonly fullLight: number;
  /** Days the window lasts at `windowTemperature`. [d], [°C] */
  readonly windowDays: number;
  readonly windowTemperature: number;
  /** Leaf length at emergence, and in the end as a multiple of the largest salad size. [cm], [1] */
  readonly leafAtEmergence: number;
  readonly leafMostOverLargest: number;
  /** Measuring error of a median leaf length, and of the thermal time at it; standard deviations of logarithms. [1] */
  readonly leafError: number;
  readonly thermalError: number;
  /** Relative spread of thermal time summed from the usual weather, and from other known days carried over to unknown ones; standard deviation of the logarithm. [1] */
  readonly usualSpread: number;
  readonly carriedSpread: number;
  /** How much wider a regrowth's requirement spreads than a sowing's. [1] */
  readonly regrowthSpread: number;
  /** Least spread of a requirement after any number of measurements. [1] */
  readonly spreadFloor: number;
  /** Shares of the variance of a crop's requirement that are the farm's and the season's; the rest is each sowing's. [1] */
  readonly farmShare: number;
  readonly seasonShare: number;
  /** How far the farm's own requirement of a crop wanders in a year; standard deviation of the logarithm. [1] */
  readonly requirementDrift: number;
  /** Error of a bed's beginning as a share of its requirement, where its emergence was seen and where it was computed. [1] */
  readonly seenStart: number;
  readonly computedStart: number;
  /** Share of its window that has passed, as a rule, when a bed is cut for salad. [1] */
  readonly cutPlace: number;
  /** Error of the grower's eye for what is salad size; standard deviation of the logarithm of thermal time. [1] */
  readonly eyeError: number;
  /** Standard deviations from what all else says beyond which a note is told and weighed down. [1] */
  readonly surprise: number;
  /** Error of one day's, or one night's, mean gain under a cover; standard deviation. [°C] */
  readonly gainError: number;
  /** Least spread of a cover's factor after any number of pairs; standard deviation of its logarithm. [1] */
  readonly warmthFloor: number;
  /** Error of what a check strip and the bed beside it differ by, of their thermal time; standard deviation of the logarithm. [1] */
  readonly stripError: number;
  /** Share of its own day gain that each further layer adds to the strongest. [1] */
  readonly furtherLayer: number;
  /** Share of a cover's night gain lost per wind. [1/(m/s)] */
  readonly nightWindLoss: number;
  /** Radiation below which night gain takes the place of day gain, little by little. [W/m²] */
  readonly dusk: number;
  /** Share of a cover's day and night gain left with a side lifted. [1] */
  readonly ventedDay: number;
  readonly ventedNight: number;
  /** Cooling per W/m² kept off by shade: of the growing point, the leaf, the seedbed's day. [°C per W/m²] */
  readonly shadeOnPace: number;
  readonly shadeOnLeaf: number;
  readonly shadeOnSoil: number;
  /** How much colder than the station crop height is on a clear night without wind, and the wind at which that is gone. [°C], [m/s] */
  readonly cropHeightDepression: number;
  readonly depressionEndsAtWind: number;
  /**
   * Mean of a week's lowest temperatures from which plants begin to harden, at which they are a little hardened and by what
   * share, and at which fully. [°C], [°C], [1], [°C]
   */
  readonly hardeningBegins: number;
  readonly hardeningSlight: number;
  readonly hardenedSlightly: number;
  readonly hardeningWhole: number;
  /** Mean of the last day from which hardening is lost, and at which nothing of it is left. [°C] */
  readonly softeningBegins: number;
  readonly softeningWhole: number;
  /** How near to the unfit temperature an open bed must come, and how far above the quality limit, to be worth a warning. [°C] */
  readonly nearFrost: number;
  readonly nearHeat: number;
  /** How much colder than the warmest cloth at hand still counts as the warmest. [°C] */
  readonly asWarm: number;
  /** Daily light integral per radiation. [mol/MJ] */
  readonly lightPerMegajoule: number;
  /** Share of full sunshine hours for sun, mixed and cloud in a typed forecast. [1] */
  readonly skySun: number;
  readonly skyMixed: number;
  readonly skyCloud: number;
  /** Cutting by hand, per metre of bed, whatever stands on it. [min/m] */
  readonly cutting: number;
  /** Air in the open outside these is the sensor's fault. [°C] */
  readonly airLowest: number;
  readonly airHighest: number;
  /** An hour that differs by more from both hours beside it is no weather. [°C] */
  readonly spikeStep: number;
  /** A sensor that varies by less than this over so many hours is stuck. [h], [°C] */
  readonly stuckHours: number;
  readonly stuckRange: number;
  /** A sensor in the sun: its rise within an hour of the morning, its daily range as a multiple of a clear sky's, its excess by day over another sensor. [°C], [1], [°C] */
  readonly sunStep: number;
  readonly sunRange: number;
  readonly sunExcess: number;
  /** Per hour and per kilogram, where a farm gives none. */
  readonly wage: number;
  readonly price: number;
}
