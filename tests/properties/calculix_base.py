#!/usr/bin/env python3
"""Compares the base solver with the finite element program CalculiX (Debian calculix-ccx).

Each base becomes a lattice of one-way springs on a rigid body: the bed as compression-only springs at the
middles of small squares, anchors as tension-only springs, rigid-body motion by linear equations between the
nodes. It shares nothing with the solver: another discretisation, another iteration, another program.

Usage: calculix_base.py DRIVER    DRIVER is tests/tools/base_driver.c, built against the core.
"""
import os
import subprocess
import sys
import tempfile

# Cells along the longer side; the lattice's error falls with the square of its step, so that two of them tell
# how much is left. The second is also the one that is judged.
COARSE, FINE = 60, 120
# Largest difference that is accepted, as a share of the largest force: three times what the two lattices
# leave open, and never less than this (the solver inside the finite element program stops near 1e-5).
LEAST_SHARE = 2e-4
# Stiffness of the bed [N/mm3]: any will do, as forces depend on the ratio to the anchors' alone.
BED = 10.0

# Own cases, invented. Rings in mm; loads are N, Sx, Sy [N, N mm], N downward, Sx = N ex, Sy = N ey.
CASES = [
    {'name': 'frame with an opening off centre',
     'outlines': [[(-200, -300), (200, -300), (200, 300), (-200, 300)]],
     'holes': [[(-120, -100), (80, -100), (80, 180), (-120, 180)]],
     'pads': [],
     'anchors': [(-160, -250), (160, -250), (160, 250), (-160, 250)],
     'bed_ratio': 5000.0,
     'loads': [(20e3, 20e6, 30e6), (-15e3, 1e6, -2e6), (60e3, -4e6, 9e6)]},
    {'name': 'four pads and a bar',
     'outlines': [],
     'holes': [],
     'pads': [(-450, -350, 120, 120), (450, -350, 120, 120), (450, 350, 120, 120), (-450, 350, 120, 120),
              (0, 0, 60, 300)],
     'anchors': [(-450, -350), (450, -350), (450, 350), (-450, 350), (0, 0)],
     'bed_ratio': 560.0,
     'loads': [(8e3, 5e6, 4e6), (3e3, -6e6, 0.0)]},
    {'name': 'angle-shaped plate',
     'outlines': [[(0, 0), (600, 0), (600, 240), (240, 240), (240, 600), (0, 600)]],
     'holes': [],
     'pads': [],
     'anchors': [(60, 60), (540, 120), (120, 540)],
     'bed_ratio': 2000.0,
     'loads': [(10e3, 10e3 * 200 + 3e6, 10e3 * 200 + 3e6), (10e3, 10e3 * 200 - 4e6, 10e3 * 200)]},
]


def inside(ring, x, y):
    """Whether a point lies in a ring (even-odd rule)."""
    found = False
    for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1]):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            found = not found
    return found


def pieces(case):
    """All outlines with their holes, pads as outlines."""
    found = [(ring, case['holes']) for ring in case['outlines']]
    for x, y, length, width in case['pads']:
        a, b = length / 2, width / 2
        found.append(([(x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b)], []))
    return found


def lattice(ring, holes, cells):
    """Middles of the squares inside a ring, and the area of one."""
    xs, ys = [p[0] for p in ring], [p[1] for p in ring]
    nx, ny = cells, cells
    dx, dy = (max(xs) - min(xs)) / nx, (max(ys) - min(ys)) / ny
    points = []
    for i in range(nx):
        for k in range(ny):
            x, y = min(xs) + (i + 0.5) * dx, min(ys) + (k + 0.5) * dy
            if inside(ring, x, y) and not any(inside(hole, x, y) for hole in holes):
                points.append((x, y))
    return points, dx * dy


def write_model(case, load, cells, path):
    """Writes the input deck; returns the node sets' sizes: one count a piece, then the anchors."""
    groups = [(*lattice(ring, holes, cells), 'BED') for ring, holes in pieces(case)]
    groups.append((case['anchors'], case['bed_ratio'], 'ANCHORS'))
    scale = 300.0
    deck = ['*NODE', '1,0.,0.,0.']
    springs, equations, sets = [], [], []
    node, element = 2, 1
    for number, (points, stiffness, kind) in enumerate(groups):
        first = node
        springs.append(f'*ELEMENT,TYPE=SPRINGA,ELSET=E{number}')
        for x, y in points:
            deck += [f'{node},{x!r},{y!r},0.', f'{node + 1},{x!r},{y!r},-100.']
            springs.append(f'{element},{node},{node + 1}')
            # upward displacement of a node is -(u0 + u1 x + u2 y); the three unknowns are node 1's
            equations += ['*EQUATION', '4', f'{node},3,1.,1,1,1.,1,2,{x / scale!r},1,3,{y / scale!r}']
            node, element = node + 2, element + 1
        push, pull = (BED * stiffness * 10, 0.0) if kind == 'BED' else (0.0, BED * stiffness * 10)
        springs += [f'*SPRING,ELSET=E{number},NONLINEAR', f'{-push!r},-10.', '0.,0.', f'{pull!r},10.']
        sets += [f'*NSET,NSET=TOP{number},GENERATE', f'{first},{node - 2},2',
                 f'*NSET,NSET=GROUND{number},GENERATE', f'{first + 1},{node - 1},2']
    deck += springs + equations + sets + ['*BOUNDARY']
    for number in range(len(groups)):
        deck += [f'TOP{number},1,2', f'GROUND{number},1,3']
    deck += ['*STEP,NLGEOM,INC=1000', '*STATIC', '0.1,1.', '*CLOAD', f'1,1,{load[0]!r}',
             f'1,2,{load[1] / scale!r}', f'1,3,{load[2] / scale!r}']
    for number in range(len(groups) - 1):
        deck += [f'*NODE PRINT,NSET=GROUND{number},FREQUENCY=1000,TOTALS=ONLY', 'RF']
    deck += [f'*NODE PRINT,NSET=GROUND{len(groups) - 1},FREQUENCY=1000', 'RF', '*END STEP', '']
    with open(path, 'w', encoding='ascii') as file:
        file.write('\n'.join(deck))


def read_forces(path, anchors):
    """Tensions, then piece forces, from the printed reactions of the ground nodes."""
    with open(path, encoding='ascii') as file:
        rows = [line.split() for line in file]
    numbers = [row for row in rows if row and row[-1][-4:-2] in ('E+', 'E-')]
    totals = [float(row[-1]) for row in numbers if len(row) == 3]
    tensions = [-float(row[-1]) for row in numbers if len(row) == 4]
    assert len(tensions) == anchors, f'{len(tensions)} anchors in {path}'
    return tensions + totals


def run_calculix(case, load, cells, folder):
    """Forces by the finite element program: tensions, then piece forces [N]."""
    write_model(case, load, cells, os.path.join(folder, 'base.inp'))
    done = subprocess.run(['ccx', 'base'], cwd=folder, capture_output=True, text=True, timeout=300, check=False,
                          env={**os.environ, 'OMP_NUM_THREADS': '1'})
    if done.returncode or '*ERROR' in done.stdout:
        sys.exit(f'calculix_base: ccx failed\n{done.stdout[-2000:]}')
    return read_forces(os.path.join(folder, 'base.dat'), len(case['anchors']))


def run_driver(driver, case):
    """Forces by the program's solver, one list a load."""
    lines = []
    flat = ' '.join
    for ring in case['outlines']:
        lines.append('outline ' + flat(f'{x} {y}' for x, y in ring))
    for ring in case['holes']:
        lines.append('hole ' + flat(f'{x} {y}' for x, y in ring))
    lines += [f'pad {x} {y} {a} {b}' for x, y, a, b in case['pads']]
    lines += [f'anchor {x} {y}' for x, y in case['anchors']]
    lines.append(f'bed_ratio {case["bed_ratio"]}')
    lines += [f'load {n!r} {sx!r} {sy!r}' for n, sx, sy in case['loads']]
    done = subprocess.run([driver], input='\n'.join(lines) + '\n', capture_output=True, text=True, check=True)
    return [[float(word) for word in line.split()[:-1]] for line in done.stdout.splitlines()]


def compare(name, own, coarse, fine):
    """Prints one load's comparison; whether it agrees."""
    most = max(map(abs, own))
    left_open = max(abs(a - b) for a, b in zip(coarse, fine)) / most
    off = max(abs(a - b) for a, b in zip(own, fine)) / most
    accepted = max(LEAST_SHARE, 3 * left_open * (COARSE / FINE) ** 2)
    where = max(range(len(own)), key=lambda i: abs(own[i]))
    print(f'{name}: largest force by the solver {own[where]:.1f}, by CalculiX {fine[where]:.1f} N; '
          f'all within {off:.1e} of the largest force, accepted {accepted:.1e}')
    return off <= accepted


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    driver, passed, failed = os.path.abspath(sys.argv[1]), 0, 0
    for case in CASES:
        for number, (load, own) in enumerate(zip(case['loads'], run_driver(driver, case)), 1):
            with tempfile.TemporaryDirectory() as folder:
                coarse = run_calculix(case, load, COARSE, folder)
                fine = run_calculix(case, load, FINE, folder)
            good = compare(f'{case["name"]}, load {number}', own, coarse, fine)
            passed, failed = passed + good, failed + (not good)
    print(f'{passed} passed, {failed} failed')
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
