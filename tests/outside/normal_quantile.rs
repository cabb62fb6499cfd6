//! The normal quantile behind every spread.

use crate::table::rows;
use quantity::variate::normal_quantile;

#[test]
fn quantiles_are_those_of_two_other_libraries() {
    for row in &rows("normal_quantile.csv") {
        // AS 241 is good to about 1 part in 10^16.
        row.expect(normal_quantile(row.number("probability")), 2e-15 * 3.1);
    }
}
