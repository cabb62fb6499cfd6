"""Makes normal_quantile.csv: `python3 make_normal_quantile.py > normal_quantile.csv`.

Two implementations that are not ours: the statistics module of CPython (Wichura's algorithm AS 241) and, as a second
opinion from another algorithm (Cephes ndtri), scipy.stats.norm.ppf. They must agree to 1e-13 before a row is written.
"""

import csv
import platform
import sys
from statistics import NormalDist

import scipy
from scipy.stats import norm

PROBABILITIES = [
    1 / 1024,
    0.001,
    0.005,
    0.025,
    0.05,
    51 / 1024,
    0.074,
    0.16,
    0.25,
    0.5,
    0.66,
    0.926,
    0.95,
    973 / 1024,
    0.999,
    1023 / 1024,
]

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["case", "probability", "want", "source"])
for p in PROBABILITIES:
    first, second = NormalDist().inv_cdf(p), float(norm.ppf(p))
    assert abs(first - second) <= 1e-13 * max(1.0, abs(second)), (p, first, second)
    source = (
        f"CPython {platform.python_version()} statistics.NormalDist().inv_cdf (AS 241); "
        f"scipy {scipy.__version__} stats.norm.ppf agrees to 1e-13"
    )
    out.writerow([f"p {p:.6g}", repr(p), repr(first), source])
