//! An area by weighing: a tracing, a foil, the sealer, the water pushed aside, the metal laid on.

use super::{Impossible, Measured, Reading, Way, above_zero, measured};
use quantity::{Density, Length, Mass, MassPerArea, Quantity, Ratio, Thickness, Volume, WorkArea};

/// A display's step as a standard deviation: uniform over one step.
const STEP_SD: f64 = 0.288_675_134_594_812_9;

/// Share by which one step of a scale blurs a mass.
fn blur(step: f64, mass: f64) -> f64 {
    STEP_SD * step / mass
}

/// One side of a piece from its tracing on paper or card, cut out and weighed against a square of the same sheet.
pub fn by_tracing(
    tracing: Mass,
    square: Mass,
    square_area: WorkArea,
    scale_step: Mass,
) -> Result<Measured<WorkArea>, Impossible> {
    let (m, m0) = (
        above_zero(tracing, Reading::Mass)?,
        above_zero(square, Reading::SquareMass)?,
    );
    let area = above_zero(square_area, Reading::Square)?;
    let step = above_zero(scale_step, Reading::Step)?;
    Ok(measured(
        Way::Tracing,
        area * m / m0,
        &[blur(step, m), blur(step, m0)],
    ))
}

/// A foil to wrap with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foil {
    /// Mass by area.
    pub mass: MassPerArea,
}

impl Foil {
    /// From thickness and density.
    pub fn of(thickness: Thickness, density: Density) -> Self {
        Self {
            mass: thickness * density,
        }
    }
}

/// Household foil: 16 um of aluminium at 2.70 g/cm3 (thickness common practice).
pub const FOIL_ALUMINIUM: Foil = Foil {
    mass: MassPerArea::of_si(16e-6 * 2700.0),
};
/// Copper foil of 0.1 mm at 8.96 g/cm3.
pub const FOIL_COPPER: Foil = Foil {
    mass: MassPerArea::of_si(100e-6 * 8960.0),
};

/// All of a piece from the foil wrapped round it in one layer, trimmed and weighed.
pub fn by_foil(wrap: Mass, foil: Foil, scale_step: Mass) -> Result<Measured<WorkArea>, Impossible> {
    let m = above_zero(wrap, Reading::Mass)?;
    let by_area = above_zero(foil.mass, Reading::Foil)?;
    let step = above_zero(scale_step, Reading::Step)?;
    Ok(measured(Way::Foil, m / by_area, &[blur(step, m)]))
}

/// All of a piece from the sealer it took up, against a coupon of known area dipped once in the same sealer.
pub fn by_sealer_gain(
    gain: Mass,
    coupon_gain: Mass,
    coupon: WorkArea,
    scale_step: Mass,
) -> Result<Measured<WorkArea>, Impossible> {
    let (m, m0) = (
        above_zero(gain, Reading::Gain)?,
        above_zero(coupon_gain, Reading::CouponGain)?,
    );
    let area = above_zero(coupon, Reading::Coupon)?;
    let step = above_zero(scale_step, Reading::Step)?;
    // A gain is the difference of two weighings.
    let twice = core::f64::consts::SQRT_2 * step;
    Ok(measured(
        Way::Sealer,
        area * m / m0,
        &[blur(twice, m), blur(twice, m0)],
    ))
}

/// Volume and whole area of a piece hung by a thread, under the liquid and clear of the bottom, in a vessel on a scale: the
/// scale gains the mass of the liquid pushed aside. `factor` is the form's area over the two-thirds power of its volume
/// (`Shape::area_factor`; 4.836 for a ball, the least there is). The volume itself is good to 1 %.
pub fn by_suspension(
    gained: Mass,
    liquid: Density,
    factor: Ratio,
    scale_step: Mass,
) -> Result<(Volume, Measured<WorkArea>), Impossible> {
    let m = above_zero(gained, Reading::Gain)?;
    let rho = above_zero(liquid, Reading::Density)?;
    let k = above_zero(factor, Reading::Factor)?;
    let step = above_zero(scale_step, Reading::Step)?;
    let volume = m / rho;
    let third = libm::cbrt(volume);
    let area = measured(
        Way::Suspension,
        k * third * third,
        &[blur(step, m) * 2.0 / 3.0],
    );
    Ok((Volume::from_si(volume), area))
}

/// All of a piece from the metal a run laid on it and the thickness measured: m / (density x thickness).
pub fn by_plated_mass(
    laid: Mass,
    metal: Density,
    thickness: Thickness,
    scale_step: Mass,
) -> Result<Measured<WorkArea>, Impossible> {
    let m = above_zero(laid, Reading::Gain)?;
    let rho = above_zero(metal, Reading::Density)?;
    let thick = above_zero(thickness, Reading::Thickness)?;
    let step = above_zero(scale_step, Reading::Step)?;
    let twice = core::f64::consts::SQRT_2 * step;
    Ok(measured(
        Way::PlatedMass,
        m / (rho * thick),
        &[blur(twice, m)],
    ))
}

/// Side of the usual square to cut from the sheet: 100 cm2.
pub const SQUARE_SIDE: Length = Length::mm(100.0);
