"""Makes second_authority.csv: `python3 make_second_authority.py > second_authority.csv`.

Atomic masses, densities and the metal's share of compounds from two libraries that are not ours: periodictable and
mendeleev. Needs `pip install periodictable mendeleev`; the versions stand in every row's source.
"""

import csv
import sys
from importlib.metadata import version

import periodictable
from mendeleev import element

SYMBOLS = "Cu Ag Au Ni Zn Sn Fe Pd Pt Rh Cr Co In Ru Pb Ti Al Cd Mn Mo Nb Si P".split()
# Our name, theirs (formula mass needs + before the water), the metal.
COMPOUNDS = [
    ("CuSO4.5H2O", "CuSO4+5H2O", "Cu"),
    ("Cu2P2O7.3H2O", "Cu2P2O7+3H2O", "Cu"),
    ("Cu(NO3)2.3H2O", "Cu(NO3)2+3H2O", "Cu"),
    ("CuCN", "CuCN", "Cu"),
    ("NiSO4.6H2O", "NiSO4+6H2O", "Ni"),
    ("NiCl2.6H2O", "NiCl2+6H2O", "Ni"),
    ("Ni(SO3NH2)2", "Ni(SO3NH2)2", "Ni"),
    ("AgNO3", "AgNO3", "Ag"),
    ("AgCH3SO3", "AgCH3SO3", "Ag"),
    ("KAg(CN)2", "KAg(CN)2", "Ag"),
    ("KAu(CN)2", "KAu(CN)2", "Au"),
    ("CrO3", "CrO3", "Cr"),
]
PT = f"periodictable {version('periodictable')}"
MV = f"mendeleev {version('mendeleev')}"

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["case", "kind", "id", "want", "tolerance_part", "source"])
for s in SYMBOLS:
    a, b = getattr(periodictable, s), element(s)
    # Masses to 5 in a million: the tables' years differ in the last digits.
    out.writerow([f"{s} mass", "mass", s, a.mass, 5e-6, PT])
    out.writerow([f"{s} mass again", "mass", s, b.atomic_weight, 5e-6, MV])
    # Densities to 1 %: solid at 20 C against 25 C, rounding, forms. Ruthenium's 12.41 is its own case (12.1 here).
    out.writerow([f"{s} density", "density", s, a.density, 0.027 if s == "Ru" else 0.01, PT])
    out.writerow([f"{s} density again", "density", s, b.density, 0.002, MV])
for ours, theirs, metal in COMPOUNDS:
    f = periodictable.formula(theirs)
    count = sum(n for atom, n in f.atoms.items() if str(atom) == metal)
    share = count * getattr(periodictable, metal).mass / f.mass
    # Ours are rounded to five digits.
    out.writerow([f"{metal} in {ours}", "share", ours, f"{share:.8f}", 3e-5, PT])
