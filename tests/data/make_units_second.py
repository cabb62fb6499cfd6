"""Makes units_second.csv: `python3 make_units_second.py > units_second.csv`.

What pint makes of every unit that can be typed, in SI, and the constants as scipy has them. Needs `pip install pint scipy`;
the versions stand in every row's source.
"""

import csv
import sys
from importlib.metadata import version

import pint
from scipy import constants

# Kind, unit as typed, the same in pint's words, its SI unit.
UNITS = [
    ("Current", "mA", "mA", "A"),
    ("CurrentDensity", "A/dm2", "A/dm**2", "A/m**2"),
    ("CurrentDensity", "mA/cm2", "mA/cm**2", "A/m**2"),
    ("CurrentDensity", "A/ft2", "A/ft**2", "A/m**2"),
    ("CurrentDensity", "mA/in2", "mA/inch**2", "A/m**2"),
    ("WorkArea", "cm2", "cm**2", "m**2"),
    ("WorkArea", "mm2", "mm**2", "m**2"),
    ("WorkArea", "dm2", "dm**2", "m**2"),
    ("WorkArea", "in2", "inch**2", "m**2"),
    ("WorkArea", "ft2", "ft**2", "m**2"),
    ("Charge", "Ah", "ampere * hour", "C"),
    ("Charge", "mAh", "milliampere * hour", "C"),
    ("Charge", "A min", "ampere * minute", "C"),
    ("Time", "h", "hour", "s"),
    ("Time", "min", "minute", "s"),
    ("Mass", "g", "gram", "kg"),
    ("Mass", "mg", "milligram", "kg"),
    ("Mass", "oz", "ounce", "kg"),
    ("Mass", "ozt", "troy_ounce", "kg"),
    ("Mass", "dwt", "pennyweight", "kg"),
    ("Length", "mm", "mm", "m"),
    ("Length", "in", "inch", "m"),
    ("Thickness", "um", "micrometer", "m"),
    ("Thickness", "mil", "thou", "m"),
    ("Thickness", "uin", "microinch", "m"),
    ("Volume", "L", "liter", "m**3"),
    ("Volume", "mL", "milliliter", "m**3"),
    ("Density", "g/cm3", "g/cm**3", "kg/m**3"),
    ("Concentration", "g/L", "g/liter", "kg/m**3"),
    ("Concentration", "mg/L", "mg/liter", "kg/m**3"),
    ("Voltage", "mV", "mV", "V"),
    ("Resistance", "mohm", "milliohm", "ohm"),
    ("AreaResistance", "ohm cm2", "ohm * cm**2", "ohm * m**2"),
    ("Conductivity", "mS/cm", "mS/cm", "S/m"),
    ("Conductivity", "S/cm", "S/cm", "S/m"),
    ("MassPerCharge", "g/Ah", "gram / (ampere * hour)", "kg/C"),
    ("MassPerCharge", "mg/(A min)", "milligram / (ampere * minute)", "kg/C"),
    ("GrowthRate", "um/h", "micrometer / hour", "m/s"),
    ("Temperature", "C", "degC", "K"),
    ("Temperature", "F", "degF", "K"),
]
u = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
PINT = f"pint {version('pint')}"

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["case", "kind", "text", "want", "source"])
for kind, typed, theirs, si in UNITS:
    for number in (1.0, 37.5):
        want = u.Quantity(number, theirs).to(si).magnitude
        out.writerow([f"{kind} {number:g} {typed}", kind, f"{number:g} {typed}", repr(float(want)), PINT])
SCIPY = f"scipy {version('scipy')} constants (CODATA 2022)"
faraday = constants.physical_constants["Faraday constant"][0]
out.writerow(["Faraday constant", "constant", "faraday", repr(constants.e * constants.N_A), f"{SCIPY}; its table says {faraday}"])
