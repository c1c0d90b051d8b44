// What a few slides say of today's boards, worked out on the phone: boardside.engine.physics.ThrowLikelihood.Day, under each
// of some models that stand for what is known of the player, weighed by how likely it makes the slides. The server's answer
// also learns from the slides how the bag is thrown; this one holds until it comes.

const GRAVITY = 9.80665;
const INCH = 0.0254;
const ARRIVAL = 9.25;
const SIN = (12 - 3.5) / 48;
const COS = Math.sqrt(1 - SIN * SIN);
const HOLDS = SIN / COS;
const LEAST_ABOVE = 1e-3;
const SHORTEST = 0.5;
const ERROR = 0.75;
const DAY_TO_DAY = 0.08;
const STEP = 0.14;
const DERIVATIVE = 0.05;
const STEPS = 8;
const LONGEST = 0.2;
const CLOSE = 1e-5;
const TAIL = 0.05;
const LENGTH = 48;

// Middles of nine equal parts of the normal distribution.
const NORMALS = [-1.5932188, -0.9674216, -0.5894558, -0.2822161, 0, 0.2822161, 0.5894558, 0.9674216, 1.5932188];

const deceleration = (friction) => GRAVITY * (friction * COS + SIN);

function slideOf(steepness, friction) {
  const left = ARRIVAL * (Math.cos(steepness) - friction * Math.sin(steepness));
  return left > 0 ? (left * left) / (2 * deceleration(friction)) / INCH : 0;
}

/** The angle at which a model's bags come down on the board, radians. */
function steepnessOf({ slide, friction }) {
  const speed = Math.sqrt(2 * deceleration(friction) * slide * INCH);
  return Math.acos(Math.min(1, speed / (ARRIVAL * Math.sqrt(1 + friction * friction)))) - Math.atan(friction);
}

/** The same throw onto boards with so many times the friction. */
export function onBoards(model, factor) {
  const friction = Math.min(5, Math.max(HOLDS + LEAST_ABOVE, model.friction * factor));
  return { ...model, slide: Math.max(SHORTEST, slideOf(steepnessOf(model), friction)), friction };
}

const landingOf = (model) => model.reach - model.slide;
const meanSlide = (model) => model.slide * (1 + model.spreadSpeed * model.spreadSpeed);
const blurred2 = (spread) => spread * spread + ERROR * ERROR;
const slideVariance = (model) => (2 * model.slide * model.spreadSpeed) ** 2 + 2 * ERROR * ERROR;

function perLog(model) {
  const steepness = steepnessOf(model);
  return (slideOf(steepness, model.friction * (1 + DERIVATIVE)) - slideOf(steepness, model.friction * (1 - DERIVATIVE)))
    / (2 * DERIVATIVE);
}

const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

/** The log of the friction against the usual that conditions let expect. */
export const expectedOf = (conditions) => ({ slow: STEP, fast: -STEP })[conditions] ?? 0;

/** Of slides as they are sent: how far each slid that stayed on the board, and how far up each landed. */
export function lengthsOf(slides) {
  return {
    slid: slides.filter(({ rest }) => rest !== null).map(({ landing, rest }) => rest.y - landing.y),
    landed: slides.map(({ landing }) => landing.y),
    across: slides.map(({ landing }) => landing.x),
  };
}

/** Under a model: mean and standard deviation of the log of the day's friction against the usual. */
export function frictionAgainst(usual, { slid, landed }, expected) {
  const days = 1 / (DAY_TO_DAY * DAY_TO_DAY);
  let log = expected;
  let precision = days;
  for (let step = 0; step < STEPS && slid.length + landed.length > 0; step++) {
    const model = onBoards(usual, Math.exp(log));
    const per = perLog(model);
    const bySlide = per / slideVariance(model);
    const byLanding = per / blurred2(model.spreadY);
    precision = days + slid.length * per * bySlide + landed.length * per * byLanding;
    const pull = days * (expected - log)
      + bySlide * (sum(slid) - slid.length * meanSlide(model))
      - byLanding * (sum(landed) - landed.length * landingOf(model));
    const move = pull / precision;
    log += Math.max(-LONGEST, Math.min(LONGEST, move));
    if (Math.abs(move) < CLOSE) break;
  }
  return { log, deviation: 1 / Math.sqrt(precision) };
}

/** The normal distribution function, to 1e-7 (Abramowitz and Stegun 1964, 7.1.26). */
function phi(z) {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
    * Math.exp(-x * x);
  return z > 0 ? 1 - tail / 2 : tail / 2;
}

const logDensities = (numbers, mean, variance) => sum(numbers.map((n) => -((n - mean) ** 2) / variance / 2
  - Math.log(variance) / 2));

function logWeight(usual, lengths, expected, { log, deviation }, halfWidth) {
  const model = onBoards(usual, Math.exp(log));
  const between = (low, high, mean, spread) => phi((high - mean) / spread) - phi((low - mean) / spread);
  const lands = between(-halfWidth, halfWidth, model.x, model.spreadX)
    * between(0, LENGTH, landingOf(model), model.spreadY);
  return logDensities(lengths.across, model.x, blurred2(model.spreadX))
    + logDensities(lengths.landed, landingOf(model), blurred2(model.spreadY))
    + logDensities(lengths.slid, meanSlide(model), slideVariance(model))
    - ((log - expected) / DAY_TO_DAY) ** 2 / 2 + Math.log(deviation)
    - lengths.across.length * Math.log(Math.max(1e-9, lands));
}

/** The mean and the 5 % and 95 % points of weighted values, the mean within them. */
function rangeOf(pairs) {
  const sorted = [...pairs].sort(([a], [b]) => a - b);
  const at = (share) => {
    let before = 0;
    for (const [value, weight] of sorted) {
      before += weight;
      if (before >= share) return value;
    }
    return sorted[sorted.length - 1][0];
  };
  const [low, high] = [at(TAIL), at(1 - TAIL)];
  return { estimate: Math.min(high, Math.max(low, sum(pairs.map(([value, weight]) => value * weight)))), low, high };
}

/**
 * What slides say of the boards: length of a slide (inches), friction against the usual, each with its range, and the chance
 * that the boards are slower than usual.
 */
export function measure(models, slides, conditions, halfWidth) {
  const lengths = lengthsOf(slides);
  const expected = expectedOf(conditions);
  const days = models.map((model) => frictionAgainst(model, lengths, expected));
  const logs = models.map((model, i) => logWeight(model, lengths, expected, days[i], halfWidth));
  const most = Math.max(...logs);
  const all = sum(logs.map((log) => Math.exp(log - most)));
  const weights = logs.map((log) => Math.exp(log - most) / all);
  const slide = [];
  const factor = [];
  models.forEach((model, i) => NORMALS.forEach((z) => {
    const times = Math.exp(days[i].log + z * days[i].deviation);
    const weight = weights[i] / NORMALS.length;
    factor.push([times, weight]);
    slide.push([onBoards(model, times).slide, weight]);
  }));
  return {
    slides: lengths.slid.length,
    slide: rangeOf(slide),
    factor: rangeOf(factor),
    slower: sum(days.map(({ log, deviation }, i) => weights[i] * phi(log / deviation))),
  };
}
