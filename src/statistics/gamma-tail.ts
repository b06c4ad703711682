import incompleteGamma from "@stdlib/math-base-special-gammainc";
import gammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";

/** Past this, and past the shape less 50, stdlib 0.3.1 uses a series with too few terms: it is off by up to 2%. */
const STDLIB_UP_TO = 1000;
const STDLIB_BELOW_SHAPE_BY = 50;
/** With a smaller shape the upper tail past `STDLIB_UP_TO` is too small for a number to hold. */
const SMALLEST_SHAPE = 50;
const SMALLEST = 1e-300;
const CONVERGED = 4e-16;
const NEWTON_STEPS = 4;

/** P(X >= x) of a gamma number of scale 1: also the lower tail of a Poisson count. */
export function gammaAtLeast(x: number, shape: number): number {
  if (stdlibHolds(x, shape)) return incompleteGamma(x, shape, true, true);
  return x < shape ? 1 - lowerSeries(x, shape) : upperFraction(x, shape);
}

/** P(X <= x) of the same. */
export function gammaAtMost(x: number, shape: number): number {
  if (stdlibHolds(x, shape)) return incompleteGamma(x, shape, true, false);
  return x < shape ? lowerSeries(x, shape) : 1 - upperFraction(x, shape);
}

/** The x with P(X <= x) = share: stdlib's answer, made exact by Newton's method where its tails are not. */
export function gammaAt(share: number, shape: number): number {
  let x = gammaQuantile(share, shape, 1);
  if (stdlibHolds(x, shape)) return x;
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    x += ((gammaAtLeast(x, shape) - (1 - share)) * x) / leadingFactor(x, shape);
  }
  return x;
}

function stdlibHolds(x: number, shape: number): boolean {
  return x <= STDLIB_UP_TO || x <= shape - STDLIB_BELOW_SHAPE_BY;
}

/** Source: Abramowitz & Stegun (1964), 6.5.29. */
function lowerSeries(x: number, shape: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let index = 1; term > CONVERGED * sum; index += 1) {
    term *= x / (shape + index);
    sum += term;
  }
  return leadingFactor(x, shape) * sum;
}

/** By Lentz's method. Source: Abramowitz & Stegun (1964), 6.5.31, as in Press et al. (2007), Numerical Recipes, 3rd ed., 6.2. */
function upperFraction(x: number, shape: number): number {
  if (shape < SMALLEST_SHAPE) return 0;
  let b = x + 1 - shape;
  let c = 1 / SMALLEST;
  let d = 1 / b;
  let fraction = d;
  for (let term = 1, change = 0; Math.abs(change - 1) > CONVERGED; term += 1) {
    const a = term * (shape - term);
    b += 2;
    d = 1 / awayFromZero(b + a * d);
    c = awayFromZero(b + a / c);
    change = c * d;
    fraction *= change;
  }
  return leadingFactor(x, shape) * fraction;
}

function awayFromZero(value: number): number {
  return Math.abs(value) < SMALLEST ? SMALLEST : value;
}

/** x^shape e^-x / Gamma(shape) by Stirling's series, written so that large terms do not cancel. */
function leadingFactor(x: number, shape: number): number {
  const beyond = (x - shape) / shape;
  const stirling = 1 / (12 * shape) - 1 / (360 * shape ** 3) + 1 / (1260 * shape ** 5);
  return Math.sqrt(shape / (2 * Math.PI)) * Math.exp(-shape * (beyond - Math.log1p(beyond)) - stirling);
}
