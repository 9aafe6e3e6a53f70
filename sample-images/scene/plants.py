"""Plants of five crops as meshes at a given day, in mm about their foot (the middle of the hole, z = 0 on the deck).

The same generator seed gives the same plant on another day: leaves appear one after another and grow, so a series of
photos shows a plant growing. Rates are invented, of the order seen in leafy crops on floating boards.
"""

import numpy as np

from leaves import Leaf, build, tube
from noise import smoothstep, wave

GOLDEN_DEG = 137.508


def blend(a, b, t):
    """Returns the colour a where t is 0 and b where t is 1."""
    t = np.asarray(t)[..., None]
    return np.asarray(a) * (1 - t) + np.asarray(b) * t


def green_colour(old, young, maturity, pale_base=0.70, tint=1.0):
    """Returns a colouring: young leaves light, the base and midrib pale, the blade slightly uneven."""

    def colour(s, tau, rng):
        blade = blend(young, old, np.full(s.shape, maturity)) * tint
        uneven = 1 + 0.05 * wave(rng, s + 0.4 * tau, (1.3, 3.1), (1, 0.6))
        pale = pale_base * np.exp(-((tau / 0.10) ** 2)) * (1 - 0.75 * s) + pale_base * 0.7 * smoothstep(0.3, 0.02, s)
        lighter_margin = 0.12 * tau**4
        return blend(blade * uneven[..., None], (0.52, 0.60, 0.28), np.clip(pale + lighter_margin, 0, 1))

    return colour


def red_colour(maturity, redness, tint=1.0, green=(0.15, 0.26, 0.045), red=(0.085, 0.014, 0.022)):
    """Returns a colouring: red where light reaches (margin, tip, outer leaves), green towards the base."""

    def colour(s, tau, rng):
        blade = blend((0.30, 0.42, 0.10), green, np.full(s.shape, maturity)) * tint
        patch = 0.16 * wave(rng, s + 0.3 * tau, (1.1, 2.7, 6.0), (1, 0.7, 0.4)) + 0.10 * wave(rng, tau - s, (2.2, 4.1), (1, 0.6))
        field = redness - 0.62 + 0.75 * s + 0.38 * tau**1.5 + patch
        amount = smoothstep(0.05, 0.62, field)
        vein = 0.55 * np.exp(-((tau / 0.07) ** 2)) * (1 - 0.8 * s)
        shade = blend(red, np.asarray(red) * 1.9, np.clip(0.5 + 0.5 * wave(rng, s, (1.7,), (1,)), 0, 1))
        mixed = blade * (1 - amount[..., None]) + shade * tint * amount[..., None]
        return blend(mixed, (0.50, 0.48, 0.26), vein)

    return colour


def rosette_leaves(day, vigour, leaves_at_start, leaves_per_day, final_length):
    """Yields index, age, length and maturity of each leaf of a rosette."""
    count = int(leaves_at_start + leaves_per_day * max(day, 0) + 1)
    for i in range(count):
        age = day - (i - leaves_at_start) / leaves_per_day + 1.5
        maturity = 1 / (1 + np.exp(-(age - 9.0) / 2.9))
        length = final_length(i) * maturity * vigour
        if length > 6:
            yield i, age, length, maturity


def crowd_rise(reach, half_pitch):
    """Returns the extra elevation in degrees of a leaf that meets its neighbours."""
    return 30 * max(0.0, reach / half_pitch - 1.0)


def butterhead(day, rng, vigour=1.0, half_pitch=72.0):
    """Grows a soft round head: flat outer leaves, cupped ones folding over the heart."""
    turn = rng.uniform(0, 360)
    tint = rng.uniform(0.9, 1.1)
    parts = []
    final = lambda i: 42 + 78 * (1 - np.exp(-i / 5.0)) - 2.0 * max(0, i - 12)
    for i, age, length, m in rosette_leaves(day, vigour, 5.0, 1.15, final):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        jitter = leaf_rng.normal(size=8)
        rise = 82 - 70 * smoothstep(2, 17, age) + 4 * jitter[0] + crowd_rise(length * 0.95, half_pitch) * smoothstep(16, 10, 8)
        heart = smoothstep(11.5, 5, age) * smoothstep(8, 18, day)
        leaf = Leaf(
            length=length * (1 + 0.05 * jitter[1]), width=length * (0.86 + 0.16 * smoothstep(2, 9, i) + 0.04 * jitter[2]),
            azimuth=turn + i * GOLDEN_DEG + 7 * jitter[3], base=(0, 0, 1.0 + 0.75 * i * vigour),
            rise=rise, rise_tip=rise - 34 + 85 * heart + 7 * jitter[4], roll=7 * jitter[5], swerve=7 * jitter[6],
            cup=0.42 + 1.05 * smoothstep(14, 5, age) + 0.12 * jitter[7], widest=0.60, petiole=0.24,
            petiole_length=0.16 if i < 5 else 0.05, ruffle=((2.4, 0.055), (5.2, 0.040), (9.5, 0.014)), curl=0.8, blister=0.024,
            rows=34, columns=12, colour=green_colour((0.155, 0.335, 0.024), (0.54, 0.70, 0.135), smoothstep(2, 15, age), tint=tint))
        parts.append(build(leaf, leaf_rng))
    return parts


def frilled(day, rng, vigour=1.0, half_pitch=72.0):
    """Grows a green rosette with a densely frilled margin."""
    turn = rng.uniform(0, 360)
    tint = rng.uniform(0.92, 1.08)
    parts = []
    final = lambda i: 40 + 72 * (1 - np.exp(-i / 5.0))
    for i, age, length, m in rosette_leaves(day, vigour, 5.0, 0.9, final):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        jitter = leaf_rng.normal(size=8)
        rise = 80 - 58 * smoothstep(1, 15, age) + 5 * jitter[0] + crowd_rise(length, half_pitch) * 0.7
        frill = smoothstep(0, 5, i)
        leaf = Leaf(
            length=length * (1 + 0.05 * jitter[1]), width=length * (0.78 + 0.20 * frill), azimuth=turn + i * GOLDEN_DEG + 8 * jitter[3],
            base=(0, 0, 1 + 0.7 * i * vigour), rise=rise, rise_tip=rise - 40 + 8 * jitter[4], roll=9 * jitter[5], swerve=8 * jitter[6],
            cup=0.35 + 0.5 * smoothstep(11, 3, age), widest=0.68, petiole=0.20,
            ruffle=((4.0, 0.035 + 0.045 * frill), (8.5, 0.015 + 0.060 * frill), (15, 0.022 * frill)), curl=0.55, blister=0.014, jag=0.03,
            rows=130, columns=12, colour=green_colour((0.125, 0.290, 0.032), (0.36, 0.50, 0.10), smoothstep(2, 14, age), tint=tint))
        parts.append(build(leaf, leaf_rng))
    return parts


def red_leaf(day, rng, vigour=1.0, half_pitch=72.0):
    """Grows a loose red rosette with wavy leaves, green at the heart and the leaf bases."""
    turn = rng.uniform(0, 360)
    tint = rng.uniform(0.85, 1.15)
    red = rng.normal(0, 0.08)
    parts = []
    final = lambda i: 42 + 76 * (1 - np.exp(-i / 5.0))
    for i, age, length, m in rosette_leaves(day, vigour, 5.0, 0.85, final):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        jitter = leaf_rng.normal(size=8)
        rise = 76 - 60 * smoothstep(1, 15, age) + 5 * jitter[0] + crowd_rise(length, half_pitch) * 0.7
        leaf = Leaf(
            length=length * (1 + 0.05 * jitter[1]), width=length * (0.74 + 0.10 * smoothstep(0, 8, i) + 0.03 * jitter[2]),
            azimuth=turn + i * GOLDEN_DEG + 8 * jitter[3], base=(0, 0, 1 + 0.7 * i * vigour), rise=rise,
            rise_tip=rise - 38 + 9 * jitter[4], roll=9 * jitter[5], swerve=9 * jitter[6], cup=0.30 + 0.55 * smoothstep(11, 3, age),
            widest=0.66, petiole=0.2, ruffle=((3.2, 0.05), (7.0, 0.042), (13, 0.014)), curl=0.7, blister=0.018, jag=0.035,
            rows=60, columns=11, colour=red_colour(smoothstep(2, 13, age), 0.30 + red + 0.55 * smoothstep(3, 13, age), tint))
        parts.append(build(leaf, leaf_rng))
    return parts


def oak_leaf(day, rng, vigour=1.0, half_pitch=72.0):
    """Grows a green rosette of deeply lobed leaves, slightly bronze at the tips."""
    turn = rng.uniform(0, 360)
    tint = rng.uniform(0.9, 1.1)
    parts = []
    final = lambda i: 40 + 76 * (1 - np.exp(-i / 4.5))
    for i, age, length, m in rosette_leaves(day, vigour, 5.0, 1.05, final):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        jitter = leaf_rng.normal(size=8)
        rise = 80 - 62 * smoothstep(1, 15, age) + 6 * jitter[0] + crowd_rise(length, half_pitch) * 0.7
        deep = smoothstep(1, 6, i)
        leaf = Leaf(
            length=length * (1 + 0.05 * jitter[1]), width=length * (0.66 + 0.10 * deep), azimuth=turn + i * GOLDEN_DEG + 9 * jitter[3],
            base=(0, 0, 1 + 0.7 * i * vigour), rise=rise, rise_tip=rise - 46 + 9 * jitter[4], roll=11 * jitter[5], swerve=11 * jitter[6],
            cup=0.25 + 0.5 * smoothstep(10, 3, age), widest=0.66, petiole=0.17, lobes=3, lobe_depth=0.50 * deep,
            ruffle=((3.0, 0.04), (7.0, 0.03)), curl=0.5, blister=0.012, jag=0.04, rows=72, columns=10,
            colour=red_colour(smoothstep(2, 13, age), -0.34 + 0.1 * jitter[7], tint, green=(0.115, 0.265, 0.030), red=(0.17, 0.13, 0.04)))
        parts.append(build(leaf, leaf_rng))
    return parts


def basil(day, rng, vigour=1.0, half_pitch=72.0):
    """Grows two or three upright stems with opposite pairs of glossy, arched leaves."""
    parts = []
    tint = rng.uniform(0.92, 1.08)
    stems = rng.integers(2, 4)
    for k in range(stems):
        stem_rng = np.random.default_rng(rng.integers(1 << 31))
        strength = vigour * stem_rng.uniform(0.85, 1.1) * (1.0 if k == 0 else 0.86)
        lean_to = 360 * k / stems + stem_rng.uniform(-40, 40)
        lean = np.radians(stem_rng.uniform(8, 20))
        tall = strength * (16 + 150 / (1 + np.exp(-(day - 17) / 5.0)))
        direction = np.array([np.cos(np.radians(lean_to)), np.sin(np.radians(lean_to))])
        foot = direction * stem_rng.uniform(3, 7)
        along = np.linspace(0, 1, 14)

        def at(f):
            side = tall * np.sin(lean) * f * (1 - 0.35 * f)
            return np.array([*(foot + direction * side), tall * np.cos(lean) * f - 6 * (1 - f)])

        parts.append(tube([at(f) for f in along], 2.3 * strength * (1.1 - 0.5 * along) * (0.6 + 0.4 * min(1, day / 18)), (0.17, 0.27, 0.06)))
        turn = stem_rng.uniform(0, 360)
        pairs = 2 + 0.30 * max(day, 0)
        for n in range(int(pairs) + 2):
            age = (pairs - n) / 0.30
            grown = 1 / (1 + np.exp(-(age - 4.2) / 1.9))
            length = strength * (min(64, 34 + 10 * n) if n else 15) * grown
            if length < 3:
                continue
            # nodes crowd towards the tip of the stem
            node = at(min(1.0, ((n + 0.7) / (pairs + 0.7)) ** 0.9))
            axil = n >= 1 and age > 12 and day > 11
            for side in (0, 180):
                parts += basil_leaf(stem_rng, node, turn + 90 * n + side, length, age, tint)
                if axil:
                    tip = node + np.array([*(8 * np.array([np.cos(np.radians(turn + 90 * n + side)), np.sin(np.radians(turn + 90 * n + side))])), 12])
                    small = length * 0.55 * smoothstep(11, 22, age)
                    for turned in (90, 270):
                        parts += basil_leaf(stem_rng, tip, turn + 90 * n + side + turned, small + 3, 4.5, tint)
    return parts


def basil_leaf(rng, node, azimuth, length, age, tint):
    """Returns the parts of one basil leaf with its petiole."""
    leaf_rng = np.random.default_rng(rng.integers(1 << 31))
    jitter = leaf_rng.normal(size=6)
    rise = 72 - 46 * smoothstep(1, 9, age) + 5 * jitter[0]
    turned = np.radians(azimuth + 8 * jitter[1])
    stalk = length * 0.22
    reach = np.array([np.cos(turned) * np.cos(np.radians(rise)), np.sin(turned) * np.cos(np.radians(rise)), np.sin(np.radians(rise))])
    start = np.asarray(node)
    end = start + stalk * reach
    leaf = Leaf(
        length=length, width=length * (0.64 + 0.04 * jitter[2]), azimuth=np.degrees(turned), base=tuple(end), rise=rise,
        rise_tip=rise - 62 + 8 * jitter[3], roll=9 * jitter[4], swerve=6 * jitter[5], cup=-0.55 if age > 4 else 0.5, widest=0.42,
        tip_power=0.75, petiole=0.06, petiole_length=0.0, ruffle=((3, 0.02), (9, 0.008)), blister=0.020, jag=0.012, rows=24, columns=9,
        colour=green_colour((0.085, 0.225, 0.022), (0.22, 0.40, 0.05), smoothstep(1, 10, age), pale_base=0.28, tint=tint))
    return [tube([start, (start + end) / 2, end], [1.0, 0.9, 0.9], (0.20, 0.32, 0.07), 5), build(leaf, leaf_rng)]


def seedling(day, rng, vigour=1.0, half_pitch=20.0):
    """Grows a seedling by days after sowing: two seed leaves on a thin stem, then the first true leaves."""
    parts = []
    turn = rng.uniform(0, 360)
    tint = rng.uniform(0.9, 1.1)
    rise_stem = vigour * 11 * smoothstep(2, 7, day) + 1
    lean = rng.normal(0, 2.5, 2)
    top = np.array([lean[0], lean[1], rise_stem])
    parts.append(tube([(0, 0, -5), tuple(top * 0.5), tuple(top)], [0.8, 0.75, 0.7], (0.42, 0.52, 0.22)))
    colour = green_colour((0.17, 0.36, 0.04), (0.33, 0.48, 0.09), 0.5, pale_base=0.3, tint=tint)
    for side in (0, 180):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        size = vigour * 17 * smoothstep(2, 9, day) * leaf_rng.uniform(0.9, 1.1)
        parts.append(build(Leaf(
            length=size, width=size * 0.58, azimuth=turn + side + leaf_rng.normal(0, 8), base=tuple(top), rise=18 + leaf_rng.normal(0, 6), rise_tip=2,
            cup=0.2, widest=0.58, petiole=0.16, petiole_length=0.2, jag=0, rows=18, columns=7, colour=colour), leaf_rng))
    for i in range(int(max(0, (day - 6) * 0.45))):
        leaf_rng = np.random.default_rng(rng.integers(1 << 31))
        size = vigour * 38 / (1 + np.exp(-(day - 6 - i / 0.45 - 5) / 2.0))
        if size > 3:
            rise = 58 - 5 * (day - 7 - i / 0.45) + leaf_rng.normal(0, 5)
            parts.append(build(Leaf(
                length=size, width=size * 0.62, azimuth=turn + 90 + GOLDEN_DEG * i + leaf_rng.normal(0, 8), base=tuple(top + [0, 0, 0.4 * i]), rise=rise,
                rise_tip=rise - 35, cup=0.5, widest=0.62, petiole=0.2, petiole_length=0.2, ruffle=((3, 0.03),), rows=22, columns=8,
                colour=green_colour((0.16, 0.33, 0.04), (0.36, 0.50, 0.11), 0.5, tint=tint)), leaf_rng))
    return parts


HABITS = {"butterhead": butterhead, "frilled": frilled, "redleaf": red_leaf, "oakleaf": oak_leaf, "basil": basil, "seedling": seedling}


def grow(habit, day, seed, vigour=1.0, half_pitch=72.0):
    """Returns one plant as (vertices, quads, uv, colours); leaves that would pass through the deck lie on it."""
    rng = np.random.default_rng(seed)
    parts = HABITS[habit](day, rng, vigour * rng.normal(1.0, 0.07), half_pitch)
    vertices, quads, uv, colours, first = [], [], [], [], 0
    for v, q, t, c in parts:
        vertices.append(v)
        quads.append(q + first)
        uv.append(t)
        colours.append(c)
        first += len(v)
    v = np.concatenate(vertices)
    near = np.hypot(v[:, 0], v[:, 1]) < 18
    resting = 2.0 + 2.0 * np.logaddexp(0.0, (v[:, 2] - 2.0) / 2.0)
    v[:, 2] = np.where(near, v[:, 2], resting)
    return v, np.concatenate(quads), np.concatenate(uv), np.clip(np.concatenate(colours), 0.004, 0.9)
