#!/usr/bin/env python3
"""Independent reference for base.case: a rigid base on a lattice of one-way springs, tension-only anchors.

Another route than the program's: no polygons are cut; the bed is thousands of springs, each on or off.
Run by hand; the numbers printed stand in base.case. Units N and mm; about two digits per tenfold lattice."""
import sys


def inside(shape, x, y):
    """In one of the rectangles of `bed` and in none of `holes`; a rectangle is x0, y0, x1, y1."""
    def among(rectangles):
        return any(x0 < x < x1 and y0 < y < y1 for x0, y0, x1, y1 in rectangles)
    return among(shape['bed']) and not among(shape['holes'])


def springs(shape, side):
    """Centres of square cells of that side that lie on the bed."""
    x0, y0 = min(r[0] for r in shape['bed']), min(r[1] for r in shape['bed'])
    x1, y1 = max(r[2] for r in shape['bed']), max(r[3] for r in shape['bed'])
    columns, rows = round((x1 - x0) / side), round((y1 - y0) / side)
    centres = [(x0 + (i + .5) * side, y0 + (j + .5) * side) for i in range(columns) for j in range(rows)]
    return [c for c in centres if inside(shape, *c)]


def solve3(a, b):
    """Cramer's rule for the three unknowns of the plane."""
    def det(m):
        return (m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]))
    whole = det(a)
    return [det([[b[r] if c == k else a[r][c] for c in range(3)] for r in range(3)]) / whole for k in range(3)]


def tensions(shape, load, ratio, side):
    """Anchor tensions [N] and the largest corner pressure [MPa] for load (N, N x, N y)."""
    bed = [(x, y, side * side, 1) for x, y in springs(shape, side)]
    every = bed + [(x, y, ratio, -1) for x, y in shape['anchors']]
    acting = None
    while True:
        now = every if acting is None else acting
        a = [[0.0] * 3 for _ in range(3)]
        for x, y, k, _ in now:
            v = (1, x, y)
            for r in range(3):
                for c in range(3):
                    a[r][c] += k * v[r] * v[c]
        w = solve3(a, load)
        following = [s for s in every if s[3] * (w[0] + w[1] * s[0] + w[2] * s[1]) > 0]
        if following == acting:
            break
        acting = following
    corners = [(x, y) for r in shape['bed'] for x in (r[0], r[2]) for y in (r[1], r[3])]
    pull = [max(0.0, -ratio * (w[0] + w[1] * x + w[2] * y)) for x, y in shape['anchors']]
    return pull, max(w[0] + w[1] * x + w[2] * y for x, y in corners)


PLATE = {'bed': [(-300, -300, 300, 300)], 'holes': [],
         'anchors': [(-250, -250), (250, -250), (250, 250), (-250, 250)]}
FRAME = {'bed': [(-200, -300, 200, 300)], 'holes': [(-100, -200, 100, 150)],
         'anchors': [(-150, -250), (150, -250), (150, 250), (-150, 250)]}
PADS = {'bed': [(x - 50, y - 40, x + 50, y + 40) for x in (-400, 400) for y in (-300, 300)], 'holes': [],
        'anchors': [(-400, -300), (400, -300), (400, 300), (-400, 300), (0, 300)]}
D = 40e6 / 2 ** .5
CASES = [('plate uniaxial k 30', PLATE, (10e3, 40e6, 0), 50e3 / 30), ('plate diagonal k 30', PLATE, (10e3, D, D), 50e3 / 30),
         ('plate diagonal k 1', PLATE, (10e3, D, D), 50e3), ('frame', FRAME, (20e3, 20e6, 30e6), 5000),
         ('frame uplift', FRAME, (-5e3, 4e6, 9e6), 800), ('pads', PADS, (9e3, 6e6, -5e6), 2000)]

if __name__ == '__main__':
    side = float(sys.argv[1]) if len(sys.argv) > 1 else 2.0
    for name, shape, load, ratio in CASES:
        pull, pressure = tensions(shape, load, ratio, side)
        print(name, ' '.join(f'{t:.1f}' for t in pull), 'N', f'{pressure:.5f} MPa')
