#!/usr/bin/python3
"""The steady line tree as one boundary-value problem, solved by SciPy's solve_bvp.

A second route to the answers of engine/tow, on another formulation: where the engine shoots along each line in
slope and tension and closes the loop with a quasi-Newton method, this script puts all lines into one
collocation problem in arc length. The unknowns along every piece of line are its place r and the Cartesian
tension vector F = T t (t the tangent toward the boat), and Newton's method moves all of them at once.

    d r/d s = (1 + |F|/EA) F/|F|
    d F/d s = -( w z + (1 + |F|/EA) (1/2 rho d Cn |Wn| Wn + 1/2 rho pi d Cf |Wt| Wt) )

s is unstretched arc length toward the boat, W the water's velocity past the boat at depth z. Every line is cut
where it passes the surface or a layer edge, so that each piece is smooth; the lengths of the pieces and of the
fishing lines are unknown parameters. Pieces share one mesh on [0, 1].
Because t is F/|F|, a piece pushed along its own direction (the folded false roots of a direction-only residual)
is no state of this problem; the smallest |F| is recorded all the same.

Frame: x ahead, y to starboard, z down, SI.
Usage:  tree_bvp.py make FILE      solve all cases and write them (about ten minutes)
        tree_bvp.py check FILE N   solve N of the cases of FILE again and compare
"""
import datetime
import json
import sys

import numpy as np
import scipy
from scipy.integrate import solve_bvp

SEED = 20251125
RHO = 1023.0
NU = 1.35e-6
TOLERANCE = 1e-10
G_REFERENCE_SPEED = 1.2


# ----------------------------------------------------------------------------------------------- loads
def velocity(layers, z, layer=None, width=0.0):
    """Water velocity past the boat at depths z: of one layer, or of all with edges blurred over `width`."""
    if layer is not None:
        l = layers[layer]
        below = z - l["top"]
        return l["vx"] + l["gx"] * below, l["vy"] + l["gy"] * below
    vx = np.zeros_like(z)
    vy = np.zeros_like(z)
    for i, l in enumerate(layers):
        share = np.ones_like(z)
        if i > 0:
            share = share * sigmoid((z - l["top"]) / width)
        if i + 1 < len(layers):
            share = share * sigmoid((layers[i + 1]["top"] - z) / width)
        bottom = layers[i + 1]["top"] if i + 1 < len(layers) else 1e9
        below = np.clip(z, l["top"] - width, bottom + width) - l["top"]
        vx = vx + share * (l["vx"] + l["gx"] * below)
        vy = vy + share * (l["vy"] + l["gy"] * below)
    return vx, vy


def sigmoid(x):
    return 0.5 * (1 + np.tanh(np.clip(x, -40, 40)))


def layer_at(layers, z):
    """Index of the layer that holds depth z, as Flow::LayerAt."""
    i = 0
    while i + 1 < len(layers) and z >= layers[i + 1]["top"]:
        i += 1
    return i


def normal_coefficient(line, wn):
    """Cn at the normal speed wn; with `white` the shape of White's law about the level at 1.2 m/s."""
    if not line["white"]:
        return line["Cn"]
    reference = G_REFERENCE_SPEED * line["d"] / NU
    re = np.maximum(wn, 1e-12) * line["d"] / NU
    return line["Cn"] * (1 + 10 * re ** (-2 / 3)) / (1 + 10 * reference ** (-2 / 3))


def body_load(body, vx, vy):
    """Force of stream and weight on a body."""
    speed = np.hypot(vx, vy)
    area = body["CdA"]
    if body.get("sphere_d"):
        re = np.maximum(speed * body["sphere_d"] / NU, 1e-9)
        cd = 24 / re * (1 + 0.1806 * re**0.6459) + 0.4251 / (1 + 6880.95 / re)
        area = cd * np.pi / 4 * body["sphere_d"] ** 2
    q = 0.5 * RHO * speed
    # Side force to the right of the body's way, which is against the stream.
    return np.array([
        q * (area * vx + body["CsA"] * vy),
        q * (area * vy - body["CsA"] * vx),
        body["W"] - q * speed * body["ClA"],
    ])


# -------------------------------------------------------------------------------- the lines of a tree
class Piece:
    """A piece of line within one medium: -1 air, else a layer's index; None: blurred (first, crude pass)."""

    def __init__(self, line, medium, length):
        self.line, self.medium, self.length = line, medium, length


def lines_of(case):
    """The lines of a tree in the order of the unknowns: (name, line, unstretched length or None)."""
    out = []
    below = 0.0
    for i, clip in enumerate(case["clips"]):
        out.append((f"main{i}", case["line"], clip["above_ball"] - below))
        below = clip["above_ball"]
        if clip["flasher"]:
            out.append((f"leader{i}", clip["leader_line"], clip["leader"]))
        out.append((f"setback{i}", clip["setback_line"], clip["setback"]))
        out.append((f"fishing{i}", clip["fishing_line"], None))
    out.append(("main_top", case["line"], case["line_m"] - below))
    return out


class Tree:
    """One boundary-value problem: pieces, their lengths as parameters, joints. Scales: L metres, N newton."""

    def __init__(self, case, chains, width):
        self.case = case
        self.width = width
        self.chains = chains  # name -> list of Piece, from the free end toward the boat
        self.order = [name for name, _, _ in lines_of(case)]
        self.total = {name: total for name, _, total in lines_of(case)}
        self.pieces = [p for name in self.order for p in chains[name]]
        self.first = {}
        k = 0
        for name in self.order:
            self.first[name] = k
            k += len(chains[name])
        self.L = case["line_m"]
        self.N = max(case["ball"]["W"], 1.0)
        # Free lengths: all pieces of a line but the last one when its total is known.
        self.free = []
        for name in self.order:
            count = len(chains[name])
            last = count - 1 if self.total[name] is not None else count
            self.free += [self.first[name] + j for j in range(last)]

    def lengths(self, p):
        out = np.zeros(len(self.pieces))
        out[self.free] = np.asarray(p) * self.L
        for name in self.order:
            total = self.total[name]
            if total is not None:
                f, n = self.first[name], len(self.chains[name])
                out[f + n - 1] = total - out[f:f + n - 1].sum()
        return out

    def piece_derivative(self, piece, r_z, F):
        """(dr/ds, dF/ds) along one piece; r_z depths, F (3, m)."""
        line = piece.line
        T = np.sqrt((F * F).sum(axis=0))
        t = F / T
        e = 1 + T * line["compliance"]
        if piece.medium == -1:
            load = np.zeros_like(F)
            weight = line["w_air"] + 0 * T
        else:
            vx, vy = velocity(self.case["layers"], r_z, piece.medium, self.width)
            W = np.array([vx, vy, np.zeros_like(vx)])
            wt = W[0] * t[0] + W[1] * t[1]
            Wn = W - wt * t
            wn = np.sqrt(np.maximum((Wn * Wn).sum(axis=0), 1e-30))
            load = (0.5 * RHO * line["d"] * normal_coefficient(line, wn) * wn * Wn +
                    0.5 * RHO * np.pi * line["d"] * line["Cf"] * np.abs(wt) * wt * t) * e
            weight = line["w"] + 0 * T
            if piece.medium is None:
                wet = sigmoid(r_z / 0.2)
                load = load * wet
                weight = line["w_air"] + (line["w"] - line["w_air"]) * wet
        load = load + np.array([0 * T, 0 * T, weight])
        return e * t, -load

    def fun(self, x, y, p=()):
        out = np.empty_like(y)
        for k, (piece, length) in enumerate(zip(self.pieces, self.lengths(p))):
            i = 6 * k
            dr, dF = self.piece_derivative(piece, y[i + 2] * self.L, y[i + 3:i + 6] * self.N)
            out[i:i + 3] = dr * length / self.L
            out[i + 3:i + 6] = dF * length / self.N
        return out

    def fun_jac(self, x, y, p=()):
        """Derivatives by central differences, good to 1e-9. Pieces do not see each other."""
        n, m = y.shape
        dfdy = np.zeros((n, n, m))
        h = 1e-7
        base = self.fun(x, y, p)
        for c in (2, 3, 4, 5):  # x and y of a place change nothing
            up, down = y.copy(), y.copy()
            up[c::6] += h
            down[c::6] -= h
            d = (self.fun(x, up, p) - self.fun(x, down, p)) / (2 * h)
            for k in range(n // 6):
                dfdy[6 * k:6 * k + 6, 6 * k + c] = d[6 * k:6 * k + 6]
        dfdp = np.zeros((n, len(p), m))
        lengths = self.lengths(p)
        for j, k in enumerate(self.free):
            dfdp[6 * k:6 * k + 6, j] = base[6 * k:6 * k + 6] * self.L / lengths[k]
            name = self.owner(k)
            if self.total[name] is not None:
                last = self.first[name] + len(self.chains[name]) - 1
                dfdp[6 * last:6 * last + 6, j] = -base[6 * last:6 * last + 6] * self.L / lengths[last]
        return (dfdy, dfdp) if len(p) else dfdy

    def owner(self, piece):
        for name in reversed(self.order):
            if piece >= self.first[name]:
                return name

    def at(self, z):
        """Velocity at a body's depth."""
        if self.width > 0:
            vx, vy = velocity(self.case["layers"], np.array([z]), None, self.width)
            return vx[0], vy[0]
        vx, vy = velocity(self.case["layers"], z, layer_at(self.case["layers"], max(z, 0.0)))
        return vx, vy

    def bc(self, ya, yb, p=()):
        L, N, case = self.L, self.N, self.case
        r = lambda y, k: y[6 * k:6 * k + 3] * L
        F = lambda y, k: y[6 * k + 3:6 * k + 6] * N
        places, forces, edges = [], [], []

        def head(name):
            return self.first[name]

        def tail(name):
            return self.first[name] + len(self.chains[name]) - 1

        for name in self.order:
            for j in range(len(self.chains[name]) - 1):
                k = self.first[name] + j
                places += list(r(yb, k) - r(ya, k + 1))
                forces += list(F(yb, k) - F(ya, k + 1))
                edges.append(r(yb, k)[2] - self.edge_between(self.pieces[k], self.pieces[k + 1]))

        eye = r(ya, 0)
        below = None
        for i, clip in enumerate(case["clips"] + [None]):
            main = f"main{i}" if clip else "main_top"
            k = head(main)
            if below is None:
                forces += list(F(ya, k) + body_load(case["ball"], *self.at(eye[2])))
            else:
                b, trail, rod = below
                forces += list(F(ya, k) + F(ya, rod) - F(yb, trail) - F(yb, b))
                places += list(r(ya, k) - r(yb, b))
            if clip is None:
                places += list(r(yb, tail(main)) - np.array(case["boom_tip"]))
                break
            set_head, set_tail = head(f"setback{i}"), tail(f"setback{i}")
            rod_head, rod_tail = head(f"fishing{i}"), tail(f"fishing{i}")
            lure = set_head
            if clip["flasher"]:
                lure = head(f"leader{i}")
                lead_tail = tail(f"leader{i}")
                z = r(yb, lead_tail)[2]
                forces += list(F(ya, set_head) - F(yb, lead_tail) + body_load(clip["flasher"], *self.at(z)))
                places += list(r(ya, set_head) - r(yb, lead_tail))
            forces += list(F(ya, lure) + body_load(clip["lure"], *self.at(r(ya, lure)[2])))
            b = tail(main)
            places += list(r(yb, set_tail) - r(yb, b))
            places += list(r(ya, rod_head) - r(yb, b))
            places += list(r(yb, rod_tail) - np.array(clip["rod_tip"]))
            forces.append(np.sqrt((F(yb, rod_tail) ** 2).sum()) - clip["rod_tension"])
            below = (b, set_tail, rod_head)
        return np.concatenate([np.array(places) / L, np.array(forces) / N, np.array(edges) / L])

    def edge_between(self, a, b):
        if a.medium == -1 or b.medium == -1:
            return 0.0
        return self.case["layers"][max(a.medium, b.medium)]["top"]

    def solve(self, x, y, p, tol, nodes):
        # SciPy wants None where there are no parameters.
        s = solve_bvp(self.fun, self.bc, x, y, p if len(p) else None, fun_jac=self.fun_jac, tol=tol,
                      bc_tol=1e-2 * tol, max_nodes=nodes)
        s.p = s.p if s.p is not None else np.zeros(0)
        return s


# ------------------------------------------------------------------------------------------ solution
def straight(a, b, pull_a, pull_b, x):
    """A straight first guess from a to b, with the tension going from pull_a to pull_b."""
    a, b = np.array(a, float), np.array(b, float)
    t = (b - a) / np.linalg.norm(b - a)
    r = a[:, None] + (b - a)[:, None] * x
    F = t[:, None] * (pull_a + (pull_b - pull_a) * x)
    return np.vstack([r, F])


def first_guess(case, tree, x, part):
    """Straight lines: small bow for the main line, trails lying along the stream."""
    L = case["line_m"]
    vx, vy = tree.at(0.4 * L)
    v = np.array([vx, vy])
    speed = max(np.hypot(*v), 1e-3)
    drag = sum(body_load(b, vx, vy)[:2]
               for b in [case["ball"]] + [c["lure"] for c in case["clips"]] +
               [c["flasher"] for c in case["clips"] if c["flasher"]])
    pull = case["ball"]["W"] - 0.8 * sum(c["rod_tension"] for c in case["clips"])
    pull = max(pull, 0.3 * case["ball"]["W"])
    slope = (drag + 0.5 * 0.5 * RHO * case["line"]["d"] * case["line"]["Cn"] * L * speed * v) / pull
    # A guess need not lean more than 55 degrees.
    slope *= min(1.0, 1.4 / max(np.hypot(*slope), 1e-9))
    up = np.array([-slope[0], -slope[1], -1.0]) / np.sqrt(1 + slope @ slope)
    boom = np.array(case["boom_tip"])
    eye = boom - up * L
    out = {}
    below = 0.0
    for i, clip in enumerate(case["clips"]):
        a = eye + up * below
        c = eye + up * clip["above_ball"]
        out[f"main{i}"] = straight(a, c, pull, pull, x)
        below = clip["above_ball"]
        aft = np.array([v[0], v[1], 0.0]) / speed
        sink = np.array([0, 0, 0.05])
        aft = (aft + sink) / np.linalg.norm(aft + sink)
        d_lure = max(np.linalg.norm(body_load(clip["lure"], vx, vy)), 0.2)
        mid = c + aft * clip["setback"]
        if clip["flasher"]:
            d_all = d_lure + np.linalg.norm(body_load(clip["flasher"], vx, vy))
            out[f"leader{i}"] = straight(mid + aft * clip["leader"], mid, d_lure, d_lure, x)
            out[f"setback{i}"] = straight(mid, c, d_all, d_all, x)
        else:
            out[f"setback{i}"] = straight(mid, c, d_lure, d_lure + 0.1, x)
        T = clip["rod_tension"]
        out[f"fishing{i}"] = straight(c, clip["rod_tip"], T, T, x)
    out["main_top"] = straight(eye + up * below, boom, pull, pull, x)
    y = np.vstack([out[name] for name in tree.order])
    for k in range(len(tree.pieces)):
        y[6 * k:6 * k + 3] /= tree.L
        y[6 * k + 3:6 * k + 6] /= tree.N
    p = [np.linalg.norm(np.array(c["rod_tip"]) - out[f"fishing{i}"][:3, 0]) / tree.L
         for i, c in enumerate(case["clips"])]
    return y, np.array(p)


class Refused(Exception):
    """A case that this script does not solve; the reason is counted."""


def crude(case):
    """A solution with blurred edges and surface: where does each line cross what?"""
    x = np.linspace(0, 1, 21)
    chains = {name: [Piece(line, None, total)] for name, line, total in lines_of(case)}
    tree = Tree(case, chains, width=0.4)
    y, p = first_guess(case, tree, x, 1.0)
    scaled = dict(case)
    for part in (0.35, 0.6, 0.8, 1.0):
        tree.case = dict(case, layers=[{**l, "vx": l["vx"] * part, "vy": l["vy"] * part, "gx": l["gx"] * part,
                                        "gy": l["gy"] * part} for l in case["layers"]])
        s = tree.solve(x, y, p, 1e-3, 4000)
        if not s.success and part == 1.0:
            raise Refused("crude pass: " + s.message)
        if s.success:
            x, y, p = s.x, s.y, s.p
    tree.case = case
    return tree, x, y, p


def crossings(z, x, edges):
    """Where a line crosses edges: list of (x, edge), in order."""
    out = []
    for e in edges:
        for i in np.nonzero((z[:-1] - e) * (z[1:] - e) < 0)[0]:
            f = (e - z[i]) / (z[i + 1] - z[i])
            out.append((x[i] + f * (x[i + 1] - x[i]), e))
    return sorted(out)


def split(case, tree, x, y, p):
    """The same lines cut at what they cross, with the crude solution as the start."""
    edges = [0.0] + [l["top"] for l in case["layers"][1:]]
    fine = np.linspace(0, 1, 4001)
    chains, starts, lengths = {}, [], tree.lengths(p)
    for name, line, total in lines_of(case):
        k = tree.first[name]
        z = np.interp(fine, x, y[6 * k + 2] * tree.L)
        cuts = crossings(z, fine, edges)
        if len({e for _, e in cuts}) < len(cuts):
            raise Refused("a line crosses one edge twice")
        bounds = [0.0] + [c for c, _ in cuts] + [1.0]
        chain = []
        for a, b in zip(bounds[:-1], bounds[1:]):
            zm = np.interp(0.5 * (a + b), fine, z)
            chain.append(Piece(line, -1 if zm < 0 else layer_at(case["layers"], zm), (b - a) * lengths[k]))
            starts.append((k, a, b))
        chains[name] = chain
    new = Tree(case, chains, width=0.0)
    nodes = np.linspace(0, 1, 21)
    y_new = np.vstack([np.array([np.interp(a + (b - a) * nodes, x, row) for row in y[6 * k:6 * k + 6]])
                       for k, a, b in starts])
    p_new = np.array([new.pieces[k].length / new.L for k in new.free])
    return new, nodes, y_new, p_new


def verify(case, tree, s):
    """A solution counts only if each piece lies in its own layer, in tension and of positive length."""
    if min(tree.lengths(s.p)) <= 0:
        raise Refused("a piece vanished")
    tension = []
    for k, piece in enumerate(tree.pieces):
        z = s.y[6 * k + 2] * tree.L
        F = s.y[6 * k + 3:6 * k + 6] * tree.N
        tension.append(np.sqrt((F * F).sum(axis=0)).min())
        low, high = -1e9, 1e-9
        if piece.medium >= 0:
            low = case["layers"][piece.medium]["top"] - 1e-9
            high = 1e9
            if piece.medium + 1 < len(case["layers"]):
                high = case["layers"][piece.medium + 1]["top"] + 1e-9
        if z.min() < low or z.max() > high:
            raise Refused("a piece leaves its layer")
        for index in (0, -1):
            for edge in [l["top"] for l in case["layers"][1:]]:
                steep = abs(F[2, index]) / np.linalg.norm(F[:, index])
                if abs(z[index] - edge) < 1e-6 and steep < 0.02:
                    raise Refused("a line grazes an edge")
    if min(tension) <= 0:
        raise Refused("slack")
    return float(min(tension))


def answers(case, tree, s, least):
    def end(name, last):
        k = tree.first[name] + (len(tree.chains[name]) - 1 if last else 0)
        column = s.y[6 * k:6 * k + 6, -1 if last else 0]
        return column[:3] * tree.L, column[3:] * tree.N

    first = "main0" if case["clips"] else "main_top"
    eye, pull = end(first, False)
    load = -pull
    ball = eye + case["eye_to_centre"] * load / np.linalg.norm(load)
    boom, pull_boom = end("main_top", True)
    clips = []
    for i, clip in enumerate(case["clips"]):
        place, rod_force = end(f"fishing{i}", False)
        lure, _ = end(f"leader{i}" if clip["flasher"] else f"setback{i}", False)
        flasher, _ = end(f"setback{i}", False)
        _, trail = end(f"setback{i}", True)
        f = tree.first[f"fishing{i}"]
        clips.append({
            "clip": list(place), "lure": list(lure), "flasher": list(flasher),
            "trail_force": list(-trail), "fishing_line_force": list(rod_force),
            "fishing_line_unstretched": float(tree.lengths(s.p)[f:f + len(tree.chains[f"fishing{i}"])].sum()),
        })
    return {
        "eye": list(eye), "ball": list(ball), "tension_ball": float(np.linalg.norm(pull)),
        "tension_boom": float(np.linalg.norm(pull_boom)), "clips": clips,
        "least_tension": least, "nodes": int(s.x.size), "pieces": len(tree.pieces),
        "rms_residual": float(s.rms_residuals.max()),
    }


def solve(case):
    """The answers to one case. Raises Refused."""
    tree, x, y, p = split(case, *crude(case))
    s = None
    for tol in (1e-5, 1e-8, TOLERANCE):
        s = tree.solve(x, y, p, tol, 6000)
        if not s.success:
            raise Refused(f"pass at {tol}: " + s.message)
        x, y, p = s.x, s.y, s.p
    least = verify(case, tree, s)
    bodies_off_edges(case, tree, s)
    return answers(case, tree, s, least)


def jumps(layers):
    """Depths of the layer edges at which the velocity jumps."""
    out = []
    for a, b in zip(layers, layers[1:]):
        d = b["top"] - a["top"]
        jump = np.hypot(b["vx"] - a["vx"] - a["gx"] * d, b["vy"] - a["vy"] - a["gy"] * d)
        out += [b["top"]] if jump > 1e-9 else []
    return out


def bodies_off_edges(case, tree, s):
    """A body near a step of the current may swim on either side of it: such a case has two steady shapes."""
    depth = lambda name: s.y[6 * tree.first[name] + 2, 0] * tree.L
    bodies = [depth("main0" if case["clips"] else "main_top")]
    for i, clip in enumerate(case["clips"]):
        for name in ([f"leader{i}"] if clip["flasher"] else []) + [f"setback{i}"]:
            bodies.append(depth(name))
            if depth(name) < 0.2:
                raise Refused("a lure at the surface")
    if any(abs(z - edge) < 1.5 for z in bodies for edge in jumps(case["layers"])):
        raise Refused("a body near a step: two shapes are possible")


# -------------------------------------------------------------------------------------------- set-ups
def make_line(rng, d, w, w_air, stiffness):
    """A line of diameter d; stretch and White's law each in half of the lines."""
    return {"d": d, "w": w, "w_air": w_air, "Cn": rng.uniform(0.95, 1.8), "Cf": rng.uniform(0.005, 0.03),
            "compliance": 1.0 / stiffness if rng.random() < 0.5 else 0.0, "white": bool(rng.random() < 0.5)}


def wire(rng):
    d = rng.uniform(0.7e-3, 1.0e-3)
    return make_line(rng, d, 0.02674 * (d / 0.8e-3) ** 2, 0.0307 * (d / 0.8e-3) ** 2, 7.4e4)


def braid(rng):
    return make_line(rng, rng.uniform(0.4e-3, 0.9e-3), -0.0002, 0.003, rng.uniform(5e3, 2e4))


def nylon(rng):
    d = rng.uniform(0.35e-3, 0.8e-3)
    return make_line(rng, d, 0.00089e6 * d * d, 0.0088e6 * d * d, 2.0e9 * d * d)


def body(rng, area, weight, lift):
    odd = rng.random() < 0.3
    return {"CdA": area, "W": weight, "ClA": rng.uniform(-lift, lift) if odd else 0.0,
            "CsA": rng.uniform(-lift, lift) if odd else 0.0}


def current(rng, speed, depth, kind):
    """Layers of the stream past the boat: uniform, linear between points, or steps; with cross flow."""
    at = lambda: np.array([-speed + rng.uniform(-0.4, 0.4), rng.uniform(-0.4, 0.4)])
    layer = lambda top, v, g=(0, 0): {"top": float(top), "vx": float(v[0]), "vy": float(v[1]),
                                      "gx": float(g[0]), "gy": float(g[1])}
    if kind == "uniform":
        return [layer(0, at())]
    tops = np.cumsum([0] + [rng.uniform(0.15, 0.5) * depth for _ in range(rng.integers(1, 4))])
    values = [at() for _ in tops]
    if kind == "steps":
        return [layer(z, v) for z, v in zip(tops, values)]
    out = [layer(a, va, (vb - va) / (b - a)) for a, b, va, vb in zip(tops, tops[1:], values, values[1:])]
    return out + [layer(tops[-1], values[-1])]


def make_clip(rng, above, boom):
    clip = {"above_ball": above, "rod_tip": [rng.uniform(0, 1.5), boom[1] + rng.uniform(-1.5, 1.5),
                                             -rng.uniform(1.5, 2.5)],
            "rod_tension": rng.uniform(9, 16), "fishing_line": nylon(rng), "setback_line": nylon(rng),
            "setback": rng.uniform(3, 20), "flasher": None, "leader": 0.0, "leader_line": None,
            "lure": body(rng, rng.uniform(0.0006, 0.002), rng.uniform(0.05, 0.4), 4e-4)}
    if rng.random() < 0.6:
        clip["flasher"] = body(rng, rng.uniform(0.004, 0.015), rng.uniform(0.1, 0.6), 3e-3)
        clip["leader"] = rng.uniform(0.6, 2.0)
        clip["leader_line"] = nylon(rng)
    return clip


def make_case(rng, kind, clips):
    count = rng.uniform(20, 220) * 0.3048
    boom = [rng.uniform(-0.5, 0.5), rng.uniform(-2, 2), -rng.uniform(0.3, 1.5)]
    pounds = rng.uniform(8, 20) if clips < 2 else rng.uniform(12, 20)
    speed = rng.uniform(1.5, 3.5) * 0.44704
    ball = body(rng, 0.0035 * (pounds / 12) ** (2 / 3) * rng.uniform(0.5, 1.3), 4.046 * pounds, 1e-3)
    if rng.random() < 0.3:
        ball["sphere_d"] = 0.0971 * (pounds / 12) ** (1 / 3)
    aboves = np.cumsum([1.2] + [rng.uniform(3, 8) for _ in range(clips)])
    return {"boom_tip": boom, "line": wire(rng) if rng.random() < 0.5 else braid(rng), "line_m": count - boom[2],
            "ball": ball, "eye_to_centre": rng.uniform(0, 0.1), "layers": current(rng, speed, count, kind),
            "clips": [make_clip(rng, float(aboves[i]), boom) for i in range(clips) if aboves[i] < 0.7 * count]}


WANTED = [  # kind of current, clips, how many
    ("uniform", 0, 6), ("linear", 0, 16), ("steps", 0, 6),
    ("uniform", 1, 5), ("linear", 1, 18), ("steps", 1, 6), ("linear", 2, 7), ("steps", 2, 2),
]


def make(path):
    rng = np.random.default_rng(SEED)
    cases, refused = [], {}
    for kind, clips, wanted in WANTED:
        got = 0
        while got < wanted:
            case = make_case(rng, kind, clips)
            if len(case["clips"]) < clips:
                continue
            try:
                result = solve(case)
            except Refused as reason:
                refused[str(reason)] = refused.get(str(reason), 0) + 1
                continue
            got += 1
            name = f"{kind}-{clips}-{got}"
            cases.append({"name": name, "current": kind, "inputs": case, "expected": result})
            print(f"{name}: depth {result['ball'][2]:.4f} m, {result['pieces']} pieces, {result['nodes']} nodes, "
                  f"residual {result['rms_residual']:.1e}", file=sys.stderr, flush=True)
    document = {
        "note": "Made by tests/validation/scipy/tree_bvp.py; see README.md. Do not edit by hand.",
        "made": datetime.date.today().isoformat(), "scipy": scipy.__version__, "numpy": np.__version__,
        "seed": SEED, "rho": RHO, "nu": NU, "tolerance": TOLERANCE, "refused": refused, "cases": cases,
    }
    with open(path, "w", encoding="utf-8") as f:
        json.dump(document, f, indent=1)
        f.write("\n")


def spread(case):
    """All places of an answer in one row."""
    parts = [case["ball"]] + [c[k] for c in case["clips"] for k in ("clip", "lure")]
    return np.concatenate([np.array(p) for p in parts])


def check(path, count):
    """Solves every so-manieth case again. Exit 1 if any place differs by more than 1e-8 of the line."""
    with open(path, encoding="utf-8") as f:
        cases = json.load(f)["cases"]
    worst = 0.0
    for case in [cases[(2 * i + 1) * len(cases) // (2 * count)] for i in range(count)]:
        again = solve(case["inputs"])
        miss = np.abs(spread(again) - spread(case["expected"])).max() / case["inputs"]["line_m"]
        worst = max(worst, miss)
        print(f"{case['name']}: solved again, differs by {miss:.1e} of the line")
    print(f"worst {worst:.1e}, SciPy {scipy.__version__}")
    return 0 if worst <= 1e-8 else 1


if __name__ == "__main__":
    if len(sys.argv) == 3 and sys.argv[1] == "make":
        make(sys.argv[2])
    elif len(sys.argv) == 4 and sys.argv[1] == "check":
        sys.exit(check(sys.argv[2], int(sys.argv[3])))
    else:
        sys.exit(__doc__)
