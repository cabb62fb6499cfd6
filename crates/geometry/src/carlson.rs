//! Carlson's symmetric integrals, for the surface of an ellipsoid.
//!
//! Source: DLMF 19.36(i) (duplication and series to the fifth degree; Carlson, Numer. Algorithms 10 (1995) 13-26), 19.21.10
//! for R_G from R_F and R_D. Only + - x / and square roots.

/// From the smallest argument to the largest, over the smallest, below which the series are exact to the last digit: their
/// error is of the sixth power of each argument's distance from the mean, at most four fifths of that.
const NEAR: f64 = 2.5e-3;
/// Each turn brings the arguments four times nearer; from 1 to 1e12 it takes some 30.
const MOST_TURNS: usize = 60;

/// The symmetric integral R_G of three plain numbers, each 0 or more. Two of them 0: half the root of the third. A negative
/// argument counts as 0.
pub fn rg(x: f64, y: f64, z: f64) -> f64 {
    let mut sorted = [x, y, z].map(|a| if a > 0.0 { a } else { 0.0 });
    sorted.sort_by(f64::total_cmp);
    // R_G grows with the root of its scale: with the largest at 1 nothing overflows or vanishes that matters.
    let scale = sorted[2];
    if scale <= 0.0 {
        return 0.0;
    }
    let [low, mid, _] = sorted.map(|a| a / scale);
    if mid <= 0.0 {
        return scale.sqrt() / 2.0;
    }
    // With the middle one in the third place all three terms are positive.
    let ends = low.sqrt() / mid.sqrt();
    let (rf, rd) = rf_and_rd(low, 1.0, mid);
    let bend = (mid - low) * (1.0 - mid) * rd / 3.0;
    scale.sqrt() * (mid * rf + bend + ends) / 2.0
}

/// R_F and R_D of the same three numbers, `x <= z <= y`: their turns are the same, and keep that order.
fn rf_and_rd(mut x: f64, mut y: f64, mut z: f64) -> (f64, f64) {
    let (mut sum, mut part) = (0.0, 1.0);
    for _ in 0..MOST_TURNS {
        if y - x <= NEAR * x {
            break;
        }
        let (rx, ry, rz) = (x.sqrt(), y.sqrt(), z.sqrt());
        let step = rx * ry + ry * rz + rz * rx;
        sum += part / (rz * (z + step));
        part *= 0.25;
        (x, y, z) = (0.25 * (x + step), 0.25 * (y + step), 0.25 * (z + step));
    }
    (rf_series(x, y, z), 3.0 * sum + part * rd_series(x, y, z))
}

fn rf_series(x: f64, y: f64, z: f64) -> f64 {
    let a = (x + y + z) / 3.0;
    let (p, q) = ((a - x) / a, (a - y) / a);
    let r = -(p + q);
    let (e2, e3) = (p * q - r * r, p * q * r);
    (1.0 - e2 / 10.0 + e3 / 14.0 + e2 * e2 / 24.0 - 3.0 * e2 * e3 / 44.0) / a.sqrt()
}

fn rd_series(x: f64, y: f64, z: f64) -> f64 {
    let a = (x + y + 3.0 * z) / 5.0;
    let (p, q) = ((a - x) / a, (a - y) / a);
    let r = -(p + q) / 3.0;
    let (pq, rr) = (p * q, r * r);
    let e2 = pq - 6.0 * rr;
    let e3 = (3.0 * pq - 8.0 * rr) * r;
    let e4 = 3.0 * (pq - rr) * rr;
    let e5 = pq * rr * r;
    let series = 1.0 - 3.0 * e2 / 14.0 + e3 / 6.0 + 9.0 * e2 * e2 / 88.0
        - 3.0 * e4 / 22.0
        - 9.0 * e2 * e3 / 52.0
        + 3.0 * e5 / 26.0;
    series / (a * a.sqrt())
}
