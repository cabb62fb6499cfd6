//! Carlson's symmetric integrals, for the surface of an ellipsoid.
//!
//! Source: DLMF 19.36(i) (duplication and series to the seventh degree; Carlson, Numer. Algorithms 10 (1995) 13-26), 19.21.10
//! for R_G from R_F and R_D. Only + - x / and square roots.

/// From the smallest argument to the largest, over the smallest, below which the series are exact to the last digit: their
/// error is of the eighth power of each argument's distance from the mean, at most four fifths of that.
const NEAR: f64 = 0.01;
/// Each turn brings the arguments four times nearer; from 1 to 1e12 it takes some 30.
const MOST_TURNS: usize = 60;
const THIRD: f64 = 1.0 / 3.0;

/// The symmetric integral R_G of three plain numbers, each 0 or more. Two of them 0: half the root of the third. A negative
/// argument counts as 0.
pub fn rg(x: f64, y: f64, z: f64) -> f64 {
    let [x, y, z] = [x, y, z].map(|a| if a > 0.0 { a } else { 0.0 });
    let lower = |a: f64, b: f64| if a < b { a } else { b };
    let higher = |a: f64, b: f64| if a > b { a } else { b };
    let (one, other) = (lower(x, y), higher(x, y));
    let (low, high) = (lower(one, z), higher(other, z));
    let mid = higher(one, lower(other, z));
    // R_G grows with the root of its scale: with the largest at 1 nothing overflows or vanishes that matters.
    if !(1e-60..1e60).contains(&high) {
        return if high <= 0.0 {
            0.0
        } else {
            high.sqrt() * rg(low / high, mid / high, 1.0)
        };
    }
    if mid <= 0.0 {
        return high.sqrt() / 2.0;
    }
    // With the middle one in the third place all three terms are positive.
    let ends = low.sqrt() * high.sqrt() / mid.sqrt();
    let (rf, rd) = rf_and_rd(low, high, mid);
    let bend = (mid - low) * (high - mid) * THIRD * rd;
    0.5 * (mid * rf + bend + ends)
}

/// R_F and R_D of the same three numbers, `x <= z <= y`: their turns are the same, and keep that order.
///
/// A turn adds the same to each and takes a quarter of it. The quarters are left to the end, where they are whole powers of
/// two and change no digit: nothing waits for them.
fn rf_and_rd(mut x: f64, mut y: f64, mut z: f64) -> (f64, f64) {
    let (mut sum, mut doubled) = (0.0, 1.0);
    for _ in 0..MOST_TURNS {
        if y - x <= NEAR * x {
            break;
        }
        let (rx, ry, rz) = (x.sqrt(), y.sqrt(), z.sqrt());
        let step = rx * ry + ry * rz + rz * rx;
        sum += doubled / (rz * (z + step));
        doubled *= 2.0;
        (x, y, z) = (x + step, y + step, z + step);
    }
    let (rf, rd) = (rf_series(x, y, z), rd_series(x, y, z));
    (doubled * rf, 3.0 * sum + doubled * rd)
}

/// To the seventh degree (DLMF 19.36.1).
fn rf_series(x: f64, y: f64, z: f64) -> f64 {
    let a = (x + y + z) * THIRD;
    let per = 1.0 / a;
    let (p, q) = ((a - x) * per, (a - y) * per);
    let r = -(p + q);
    let (e2, e3) = (p * q - r * r, p * q * r);
    let by_e2 = e2 * (e2 * (1.0 / 24.0 - e2 * (5.0 / 208.0)) - 0.1);
    let by_e3 = e3 * (1.0 / 14.0 + e2 * (e2 / 16.0 - 3.0 / 44.0) + e3 * (3.0 / 104.0));
    (1.0 + by_e2 + by_e3) / a.sqrt()
}

/// To the seventh degree (DLMF 19.36.2).
fn rd_series(x: f64, y: f64, z: f64) -> f64 {
    let a = (x + y + 3.0 * z) * 0.2;
    let per = 1.0 / a;
    let (p, q) = ((a - x) * per, (a - y) * per);
    let r = (p + q) * -THIRD;
    let (pq, rr) = (p * q, r * r);
    let e2 = pq - 6.0 * rr;
    let e3 = (3.0 * pq - 8.0 * rr) * r;
    let e4 = 3.0 * (pq - rr) * rr;
    let e5 = pq * rr * r;
    let by_e2 = e2 * (e2 * (9.0 / 88.0 - e2 / 16.0) - 3.0 / 14.0);
    let by_e3 = e3 * (1.0 / 6.0 + e2 * (e2 * (45.0 / 272.0) - 9.0 / 52.0) + e3 * (3.0 / 40.0));
    let by_e4 = e4 * (e2 * (3.0 / 20.0) - e3 * (9.0 / 68.0) - 3.0 / 22.0);
    let by_e5 = e5 * (3.0 / 26.0 - e2 * (9.0 / 68.0));
    (1.0 + by_e2 + by_e3 + by_e4 + by_e5) / (a * a.sqrt())
}
