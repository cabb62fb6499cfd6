"""Second authority for areas and volumes: writes geometry_second.csv and geometry_elliprg.csv beside this file.

Meshes by trimesh (areas and volumes are sums over triangles), Carlson's R_G by scipy, arc lengths by scipy's quadrature.
Run in any environment with: pip install numpy scipy trimesh
"""

import csv
import math
import pathlib

import numpy as np
import scipy
import trimesh
from scipy.integrate import quad
from scipy.special import elliprg

HERE = pathlib.Path(__file__).parent
MESH = f"trimesh {trimesh.__version__}"
SCIPY = f"scipy {scipy.__version__}"
rows = []


def add(case, shape, face, area, volume, tolerance, source):
    rows.append([case, shape, face, repr(float(area)) if area is not None else "",
                 repr(float(volume)) if volume is not None else "", tolerance, source])


def revolve(profile, closed=False, n=1440):
    """Turns a profile (r, z) about the axis."""
    profile = np.array(profile, dtype=float)
    if closed:
        profile = np.vstack([profile, profile[:1]])
    return trimesh.creation.revolve(profile, sections=n)


def arc(r, h, n=400, z0=0.0):
    """Profile of a spherical cap over a circle of radius r, from the rim up to the pole."""
    big = (r * r + h * h) / (2 * h)
    a = math.atan2(r, big - h) if h <= big else math.pi - math.asin(r / big)
    return [(big * math.sin(t), z0 + big * math.cos(t) - (big - h)) for t in np.linspace(a, 0, n)]


def sweep(path, d, closed, n=128):
    """A tube of round section along a path, as triangles; area of the side only, volume by pi/4 d^2 is not taken."""
    path = np.array(path, dtype=float)
    m = len(path)
    nxt = np.roll(path, -1, 0) if closed else np.vstack([path[1:], 2 * path[-1] - path[-2]])
    prv = np.roll(path, 1, 0) if closed else np.vstack([2 * path[0] - path[1], path[:-1]])
    tangent = nxt - prv
    tangent /= np.linalg.norm(tangent, axis=1)[:, None]
    up = np.array([0.0, 0.0, 1.0])
    u = np.cross(up, tangent)
    u /= np.linalg.norm(u, axis=1)[:, None]
    v = np.cross(tangent, u)
    ring = np.linspace(0, 2 * math.pi, n, endpoint=False)
    points = (path[:, None, :] + d / 2 * (np.cos(ring)[None, :, None] * u[:, None, :]
                                          + np.sin(ring)[None, :, None] * v[:, None, :])).reshape(-1, 3)
    faces = []
    for k in range(m if closed else m - 1):
        a, b = k * n, ((k + 1) % m) * n
        for j in range(n):
            i = (j + 1) % n
            faces += [[a + j, b + j, b + i], [a + j, b + i, a + i]]
    return trimesh.Trimesh(points, faces, process=False)


def hull(points):
    return trimesh.Trimesh(points).convex_hull if len(points) < 4 else trimesh.convex.convex_hull(np.array(points))


# Rings.
m = trimesh.creation.torus(9.5, 1.0, major_sections=720, minor_sections=360)
add("torus", "torus bore=17 wire_d=2", "all", m.area, m.volume, 0.02, f"{MESH} torus 720x360")
m = trimesh.creation.annulus(8.5, 10.0, 6.0, sections=2048)
add("band", "band bore=17 wall=1.5 width=6", "all", m.area, m.volume, 0.02, f"{MESH} annulus 2048")
for wall, width in [(1.0, 4.0), (2.0, 4.0), (2.8, 4.0)]:
    side = max(0.0, wall - width / 2)
    rise = min(wall, width / 2)
    top = arc(width / 2, rise)
    right = [(8.5 + side + z, x) for x, z in top]
    left = [(8.5 + side + z, -x) for x, z in top[::-1]][1:]
    profile = [(8.5, width / 2)] + right + left + [(8.5, -width / 2)]
    if side == 0:
        profile = right + left
    m = revolve(profile, closed=True)
    add(f"half-round band, wall {wall}", f"half_round bore=17 wall={wall} width={width}", "all", m.area, abs(m.volume), 0.02,
        f"{MESH} revolved 1440, arc of 800")
# Shells.
for height in [9.0, 5.0]:
    outer, inner = arc(9.0, height), arc(8.0, height - 1.0)
    m = revolve(outer[::-1] + inner)
    add(f"cap, height {height}", f"cap outer_d=18 inner_d=16 height={height}", "all", m.area, abs(m.volume), 0.02,
        f"{MESH} revolved 1440")
    m = revolve(inner)
    add(f"cap, height {height}, inside", f"cap outer_d=18 inner_d=16 height={height}", "inside", m.area, None, 0.02,
        f"{MESH} revolved 1440")
m = revolve(arc(10.0, 6.0))
add("dome", "dome opening_d=20 height=6", "half", m.area, None, 0.02, f"{MESH} revolved 1440")
m = trimesh.creation.icosphere(7, radius=6.0)
add("sphere", "sphere diameter=12", "all", m.area, m.volume, 0.02, f"{MESH} icosphere 7")
# Plates, rods, cones.
m = trimesh.creation.box((40, 25, 0.8))
add("sheet", "sheet length=40 width=25 thickness=0.8", "all", m.area, m.volume, 1e-6, f"{MESH} box")
m = trimesh.creation.box((20, 12, 8))
add("box", "box length=20 width=12 height=8", "all", m.area, m.volume, 1e-6, f"{MESH} box")
m = trimesh.creation.cylinder(12.5, 1.0, sections=2048)
add("disc", "disc diameter=25 thickness=1", "all", m.area, m.volume, 0.02, f"{MESH} cylinder 2048")
m = trimesh.creation.cylinder(1.5, 30.0, sections=2048)
add("rod", "rod diameter=3 length=30", "all", m.area, m.volume, 0.02, f"{MESH} cylinder 2048")
m = trimesh.creation.annulus(2.5, 3.0, 20.0, sections=2048)
add("tube", "tube bore=5 wall=0.5 length=20", "all", m.area, m.volume, 0.02, f"{MESH} annulus 2048")
m = revolve([(0, 0), (6, 0), (0, 15)])
add("cone", "cone base_d=12 height=15", "all", m.area, abs(m.volume), 0.02, f"{MESH} revolved 1440")
m = revolve([(10, 0), (0, 18)])
add("snail", "snail diameter=20 height=18", "all", m.area, None, 0.02, f"{MESH} revolved 1440, no base")
m = revolve([(0, 0), (8, 0), (5, 12), (0, 12)])
add("frustum", "frustum base_d=16 top_d=10 height=12", "all", m.area, abs(m.volume), 0.02, f"{MESH} revolved 1440")
m = revolve([(0, 0), (3, 0), (1.5, 60), (0, 60)])
add("twig", "twig base_d=6 top_d=3 length=60", "all", m.area, abs(m.volume), 0.02, f"{MESH} revolved 1440")
# Cups: the sloping inside runs level with the outside, one wall in.
floor = 5 + (8 - 5) * 0.8 / 12 - 0.8
m = revolve([(0, 0), (5, 0), (8, 12), (7.2, 12), (floor, 0.8), (0, 0.8)])
add("cup", "cup opening_d=16 base_d=10 height=12 wall=0.8", "all", m.area, abs(m.volume), 0.02, f"{MESH} revolved 1440")
m = revolve([(7.2, 12), (floor, 0.8), (0, 0.8)])
add("cup, inside", "cup opening_d=16 base_d=10 height=12 wall=0.8", "inside", m.area, None, 0.02, f"{MESH} revolved 1440")
m = revolve([(0, 0), (6, 0), (6, 4), (5.5, 4), (5.5, 0.5), (0, 0.5)])
add("bezel", "bezel outer_d=12 height=4 wall=0.5", "all", m.area, abs(m.volume), 0.02, f"{MESH} revolved 1440")
m = revolve([(0, 0), (6, 0), (6, 4), (5.5, 4)])
add("bezel with its stone", "bezel outer_d=12 height=4 wall=0.5 inside=covered", "all", m.area, None, 0.02,
    f"{MESH} revolved 1440, inside left out")
# Ellipsoids.
ball = trimesh.creation.icosphere(7)
for name, spec, axes in [("ellipsoid", "ellipsoid length=30 width=18 height=15", (15, 9, 7.5)),
                         ("seed head", "seed_head diameter=25 height=35", (12.5, 12.5, 17.5)),
                         ("flat ellipsoid", "ellipsoid length=40 width=40 height=4", (20, 20, 2)),
                         ("needle", "ellipsoid length=60 width=3 height=3", (30, 1.5, 1.5))]:
    m = ball.copy()
    m.vertices *= np.array(axes)
    add(name, spec, "all", m.area, m.volume if name != "seed head" else None, 0.1, f"{MESH} icosphere 7 scaled")
for name, spec, (a, b, c), both in [
        ("half ellipsoid", "half_ellipsoid length=18 width=13 height=5 base=covered", (9, 6.5, 5), False),
        ("shell", "shell length=35 width=30 height=10", (17.5, 15, 10), True)]:
    m = ball.copy()
    m.vertices *= np.array((a, b, c))
    add(name, spec, "half" if both else "all", m.area / 2, None if both else m.volume / 2, 0.1,
        f"{MESH} icosphere 7 scaled, halved")
# Wire.
turns = 10
t = np.linspace(0, turns, 4001)
m = sweep(np.c_[5 * np.cos(2 * math.pi * t), 5 * np.sin(2 * math.pi * t), 2 * t], 1.0, False)
add("coil", "coil bore=9 wire_d=1 pitch=2 length=20", "all", m.area, None, 0.05, f"{MESH} tube along a helix of 4000 steps")
straight, bend = 3.0, 2.5
end = np.linspace(-math.pi / 2, math.pi / 2, 400)
line = np.linspace(0, straight, 60)[1:-1]
path = np.vstack([np.c_[straight / 2 + bend * np.cos(end), bend * np.sin(end), 0 * end],
                  np.c_[straight / 2 - line, 0 * line + bend, 0 * line],
                  np.c_[-straight / 2 - bend * np.cos(end), -bend * np.sin(end), 0 * end],
                  np.c_[-straight / 2 + line, 0 * line - bend, 0 * line]])
m = sweep(path, 1.0, True)
add("link", "link length=9 width=6 wire_d=1", "all", m.area, abs(m.volume), 0.05, f"{MESH} tube along two straights and two bends")
links = 100.0 / 7.0
add("chain", "chain length=100 link_length=9 link_width=6 wire_d=1", "all", m.area * links * 0.965, abs(m.volume) * links,
    0.05, f"{MESH} link times 100/7, 3.5 % hidden (common practice)")
one = quad(lambda z: math.sqrt(1 + (math.pi * 0.8 / 3.2) ** 2), 0, 60)[0]
add("twisted pair", "twisted_pair wire_d=0.8 pitch=3.2 length=60", "all", 0.8 * 2 * math.pi * 0.8 * one,
    2 * math.pi / 4 * 0.64 * one, 1e-6, f"{SCIPY} quad of the helix, a fifth hidden (common practice)")
wire = trimesh.creation.cylinder(0.2, 30.0, sections=2048)
side = wire.area - 2 * math.pi * 0.04
add("mesh", "mesh length=30 width=20 wire_d=0.4 pitch=1.2 layers_count=1", "all",
    side * (20 / 1.2) + side * (20 / 30) * (30 / 1.2), wire.volume * (20 / 1.2) * 2, 0.05,
    f"{MESH} cylinder, 20/1.2 wires of 30 and 30/1.2 of 20")
# Leaves: the lens by quadrature of two arcs.
for length, width in [(60.0, 30.0), (60.0, 10.0), (20.0, 20.0)]:
    r = (length ** 2 / 4 + width ** 2 / 4) / width
    one = 2 * quad(lambda x: math.sqrt(max(0.0, r * r - x * x)) - (r - width / 2), -length / 2, length / 2, epsabs=1e-10)[0]
    add(f"lens {length:g} x {width:g}", f"leaf length={length} width={width} form=lens", "half", one, None, 1e-4,
        f"{SCIPY} quad of two arcs")
# Crystal.
s = 12 / math.sqrt(3)
corner = [(s * math.cos(k * math.pi / 3), s * math.sin(k * math.pi / 3)) for k in range(6)]
m = hull([(x, y, 0) for x, y in corner] + [(x, y, 25) for x, y in corner] + [(0, 0, 33)])
add("crystal", "crystal flats=12 height=25 point=8", "all", m.area, m.volume, 1e-6, f"{MESH} convex hull")

with open(HERE / "geometry_second.csv", "w", newline="") as f:
    w = csv.writer(f, lineterminator="\n")
    w.writerow(["case", "shape", "face", "area_mm2", "volume_mm3", "tolerance_percent", "source"])
    w.writerows(rows)

args = [(1, 1, 1), (1, 2, 3), (0, 1, 2), (0, 0, 1), (0, 1, 1), (1, 1, 1e6), (1, 1e6, 1e6), (1e-6, 1, 1e6), (36, 72, 72),
        (9, 36, 100), (0.5, 0.5000001, 0.4999999), (1e-12, 1, 1), (2.25, 2.25, 900), (1e-300, 1e-200, 1)]
with open(HERE / "geometry_elliprg.csv", "w", newline="") as f:
    w = csv.writer(f, lineterminator="\n")
    w.writerow(["case", "x", "y", "z", "want", "source"])
    for x, y, z in args:
        w.writerow([f"R_G of {x:g} {y:g} {z:g}", repr(float(x)), repr(float(y)), repr(float(z)),
                    repr(float(elliprg(x, y, z))), f"{SCIPY} special.elliprg"])
