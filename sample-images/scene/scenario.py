"""The invented farm: boards, crops, rafts, and which photo shows what. Nothing here is a real farm's data."""

import datetime

TIME_ZONE = "Europe/Copenhagen"

LAYOUTS = {
    "float-20": {
        "board": {"width_mm": 620, "length_mm": 840},
        "sites": {"rows": 5, "columns": 4, "first_x_mm": 92, "first_y_mm": 150, "pitch_x_mm": 145, "pitch_y_mm": 145, "stagger_x_mm": 0},
        "markers": {"family": "tag36h11", "side_mm": 34, "centres_mm": [[32, 32], [588, 32], [588, 808], [32, 808]]},
        "tag": {"x_mm": 310, "y_mm": 46, "side_mm": 72},
    },
    "stagger-24": {
        "board": {"width_mm": 420, "length_mm": 1060},
        "sites": {"rows": 8, "columns": 3, "first_x_mm": 60, "first_y_mm": 75, "pitch_x_mm": 120, "pitch_y_mm": 130, "stagger_x_mm": 60},
        "orientation_mark": {"x_mm": 392, "y_mm": 28, "diameter_mm": 28, "look": "dark"},
    },
    "tray-70": {
        "board": {"width_mm": 460, "length_mm": 680},
        "sites": {"rows": 10, "columns": 7, "first_x_mm": 65, "first_y_mm": 118, "pitch_x_mm": 55, "pitch_y_mm": 55, "stagger_x_mm": 0},
        "markers": {"family": "tag36h11", "side_mm": 34, "centres_mm": [[30, 30], [430, 30], [430, 650], [30, 650]]},
        "tag": {"x_mm": 230, "y_mm": 46, "side_mm": 72},
    },
}
HOLES = {"float-20": (21, "cup"), "stagger-24": (17, "plug"), "tray-70": (11, "plug")}

STATIONS = {
    "bench": {"kind": "passing", "width": 1280, "height": 1200, "height_mm": 1500,
              "lens": {"fx_px": 1952.0, "fy_px": 1952.0, "cx_px": 646.3, "cy_px": 594.8, "k1": -0.115, "k2": 0.034, "p1": 0.0004, "p2": -0.0003, "k3": 0.0}},
    "gantry": {"kind": "fixed", "width": 1620, "height": 1090, "height_mm": 2050,
               "lens": {"fx_px": 1795.0, "fy_px": 1795.0, "cx_px": 804.7, "cy_px": 549.9, "k1": -0.087, "k2": 0.021, "p1": -0.0003, "p2": 0.0002, "k3": 0.0}},
}

# raft, pond, berth, [(crop, sites or "", variety)], layout, sown, transplanted, harvest by, ended, lot
RAFTS = {
    "KV-112": ("N", 4, [("butterhead", "", "Marle")], "float-20", "2026-02-13", "2026-03-02", "2026-04-01", "2026-03-29", "B09"),
    "KV-118": ("N", 5, [("redleaf", "A1-C4", "Corvane"), ("oakleaf", "D1-E4", "Tessel")], "float-20", "2026-02-10", "2026-02-27", "2026-03-30", "", "R08"),
    "KV-121": ("N", 6, [("basil", "", "Ondine")], "float-20", "2026-02-05", "2026-02-27", "2026-03-28", "", "V08"),
    "KV-126": ("N", 7, [("redleaf", "", "Corvane")], "float-20", "2026-02-12", "2026-03-01", "2026-03-31", "", "R09"),
    "KV-130": ("N", 8, [("frilled", "", "Halm")], "float-20", "2026-02-19", "2026-03-07", "2026-04-06", "", "F10"),
    "KT-03": ("N", 12, [("butterhead", "", "Marle")], "tray-70", "2026-02-27", "", "", "", "B11"),
    "KV-201": ("S", 1, [("butterhead", "", "Marle")], "stagger-24", "2026-02-15", "2026-03-03", "2026-04-02", "", "B09"),
    "KV-202": ("S", 2, [("redleaf", "", "Corvane")], "stagger-24", "2026-02-12", "2026-02-28", "2026-03-30", "", "R09"),
    "KV-203": ("S", 3, [("oakleaf", "", "Tessel")], "stagger-24", "2026-02-15", "2026-03-04", "2026-04-03", "", "O09"),
    "KV-204": ("S", 4, [("basil", "", "Ondine")], "stagger-24", "2026-02-02", "2026-02-24", "2026-03-24", "2026-03-19", "V08"),
    "KV-207": ("S", 4, [("frilled", "", "Halm")], "stagger-24", "2026-03-01", "2026-03-19", "2026-04-18", "", "F11"),
}

# station, slot, raft, from, to
PLACEMENTS = [
    ("gantry", "s1", "KV-201", "2026-03-03", ""), ("gantry", "s2", "KV-202", "2026-02-28", ""), ("gantry", "s3", "KV-203", "2026-03-04", ""),
    ("gantry", "s4", "KV-204", "2026-02-24", "2026-03-19"), ("gantry", "s4", "KV-207", "2026-03-19", ""),
]

EVENTS = [
    ("2026-03-04T08:30", "died", "KV-112", "C2", "", "", "IB", "did not take"),
    ("2026-03-12T10:20", "moved", "KV-112", "E4", "KV-112", "C2", "IB", "gap filled from the edge"),
    ("2026-03-15T09:05", "harvested", "KV-118", "C4", "", "", "IB", "one head for the tasting panel"),
    ("2026-03-19T07:40", "harvested", "KV-204", "", "", "", "MS", "whole raft"),
    ("2026-03-29T08:15", "harvested", "KV-112", "", "", "", "IB", "whole raft"),
]

EMPTY = {"KV-112": {"C2": ("", "2026-03-12"), "E4": ("2026-03-12", "")}, "KV-118": {"B1": ("", ""), "C4": ("2026-03-15", "")},
         "KV-121": {"D3": ("", "")}, "KV-126": {"A4": ("", ""), "E2": ("", "")}, "KV-130": {"B4": ("", "")}, "KV-201": {"F2": ("", "")},
         "KV-203": {"C1": ("", ""), "H3": ("", "")}, "KV-207": {"D2": ("", "")}, "KT-03": {"B5": ("", ""), "G2": ("", ""), "J7": ("", "")}}
# site: day from which the plant lags, and the pace it keeps
LAGGING = {"KV-112": {"B3": (3, 0.50)}, "KV-126": {"C1": (5, 0.5)}, "KV-130": {"D2": (4, 0.55)}, "KV-201": {"C3": (3, 0.5)}, "KV-202": {"G1": (6, 0.5)}}


def _shot(date, time, raft, **more):
    return {"name": f"{date}/{date}_{raft}.jpg", "date": date, "time": time, "station": "bench", "rafts": [(raft, 0, 0, 0)], "exif": True,
            "kind": "overcast", "turn": 0.0, "tilt": (1.0, -0.8), "aim": (0, 0), "neighbours": [], **more}


# neighbours: raft look-alike (name of a raft whose plants are shown), x, y, degrees; place of its origin corner in board mm
SHOTS = [
    _shot("2026-03-06", "17:52", "KV-112", turn=0.8, tilt=(1.2, -0.9), aim=(4, -3), neighbours=[("KV-131", 643, -18, 0.6), ("KV-132", -652, 30, -0.5)]),
    _shot("2026-03-10", "18:04", "KV-112", turn=-1.1, tilt=(-0.9, 1.6), aim=(-6, 2), neighbours=[("KV-131", 648, 22, -0.3)], hose="left"),
    _shot("2026-03-14", "17:47", "KV-112", turn=0.4, tilt=(2.1, 0.7), aim=(3, 5), neighbours=[("KV-131", 640, -40, 0.2), ("KV-132", -640, 12, 0.4)]),
    _shot("2026-03-18", "18:10", "KV-112", turn=1.6, tilt=(-1.5, -1.4), aim=(8, 0), neighbours=[("KV-132", -646, -25, 0.8)], exif=False),
    _shot("2026-03-22", "17:58", "KV-112", turn=-0.6, tilt=(0.8, 2.4), aim=(-4, -4), neighbours=[("KV-131", 644, 8, -0.6), ("KV-132", -655, -8, 0.3)]),
    _shot("2026-03-26", "18:01", "KV-112", turn=0.9, tilt=(1.7, -1.2), aim=(2, 3), neighbours=[("KV-131", 650, 15, 0.4)], hose="left"),
    _shot("2026-03-14", "18:20", "KV-118", turn=181.2, tilt=(1.4, 1.9), aim=(-3, 4), neighbours=[("KV-133", 645, 10, -0.4)], hose="left"),
    _shot("2026-03-18", "07:35", "KV-121", turn=-1.3, tilt=(-2.2, 1.1), aim=(2, -5), kind="sun", neighbours=[("KV-131", 648, -12, 0.5)]),
    _shot("2026-03-20", "18:33", "KV-126", turn=90.9, tilt=(1.3, -3.2), aim=(4, 4), kind="warm", neighbours=[("KV-133", -642, 14, 0.4)]),
    _shot("2026-03-22", "18:15", "KV-130", turn=0.7, tilt=(-3.4, 0.9), aim=(0, 2), neighbours=[("KV-133", 646, 20, 0.7), ("KV-131", -648, -15, -0.6)]),
    _shot("2026-03-12", "18:30", "KT-03", turn=-0.9, tilt=(1.1, 1.3), aim=(5, -6), neighbours=[("KT-04", 486, 12, 0.7), ("KT-05", -484, -9, -0.4)]),
    *({"name": f"{date}/{date}_gantry.jpg", "date": date, "time": time, "station": "gantry", "exif": True, "kind": kind, "rafts": rafts, "neighbours": above}
      for date, time, kind, rafts, above in (
        ("2026-03-08", "12:30", "overcast", [("KV-201", 2, 3, 0.12), ("KV-202", 433, -2, -0.10), ("KV-203", 866, 4, 0.05), ("KV-204", 1299, 1, 0.16)],
         [("KV-221", 3, -1073, 0.1), ("KV-222", 436, -1080, -0.2), ("KV-223", 868, -1074, 0.1), ("KV-222", 1302, -1078, 0.3), ("KV-223", 4, 1079, 0.2),
          ("KV-221", 437, 1073, 0.0), ("KV-222", 871, 1082, -0.2), ("KV-221", 1306, 1076, 0.1)]),
        ("2026-03-16", "12:30", "overcast", [("KV-201", -1, 1, -0.10), ("KV-202", 431, 3, 0.08), ("KV-203", 864, -3, -0.15), ("KV-204", 1298, 2, 0.10)],
         [("KV-221", 0, -1076, 0.2), ("KV-222", 433, -1073, 0.1), ("KV-223", 866, -1081, -0.1), ("KV-222", 1300, -1074, 0.1), ("KV-223", 1, 1076, -0.1),
          ("KV-221", 434, 1077, 0.1), ("KV-222", 868, 1074, 0.2), ("KV-221", 1303, 1078, -0.2)]),
        ("2026-03-23", "19:05", "evening", [("KV-201", 1, -2, 0.08), ("KV-202", 434, 1, -0.05), ("KV-203", 867, 2, 0.12), ("KV-207", 1301, -3, -0.18)],
         [("KV-221", 2, -1078, -0.1), ("KV-222", 436, -1075, 0.2), ("KV-223", 869, -1077, 0.0), ("KV-222", 1304, -1079, 0.1), ("KV-223", 3, 1074, 0.1),
          ("KV-221", 435, 1078, -0.2), ("KV-222", 869, 1079, 0.1), ("KV-221", 1304, 1075, 0.2)]))),
]
GANTRY_POSE = {"aim": (861, 534), "tilt": (0.9, -0.7), "turn": 0.35}

# look-alikes beside the rafts: crop, transplanted, layout
EXTRAS = {"KV-131": ("butterhead", "2026-03-03", "float-20"), "KV-132": ("oakleaf", "2026-03-04", "float-20"), "KV-133": ("frilled", "2026-02-27", "float-20"),
          "KT-04": ("butterhead", "2026-02-27", "tray-70"), "KT-05": ("oakleaf", "2026-02-28", "tray-70"),
          "KV-221": ("butterhead", "2026-03-02", "stagger-24"), "KV-222": ("frilled", "2026-03-05", "stagger-24"), "KV-223": ("redleaf", "2026-03-02", "stagger-24")}

# size of a raft's plants against the crop's usual size
VIGOUR = {"KV-112": 0.88}


def days_between(first, last):
    """Returns the calendar days from one ISO date to another."""
    return (datetime.date.fromisoformat(last) - datetime.date.fromisoformat(first)).days


def layout_of(raft):
    """Returns the name of the raft's layout."""
    return RAFTS[raft][3] if raft in RAFTS else EXTRAS[raft][2]


def in_range(site, sites):
    """Says whether a site lies in a range such as A1-C4 (blank: the whole board)."""
    if not sites:
        return True
    a, b = sites.split("-")
    return a[0] <= site[0] <= b[0] and int(a[1:]) <= int(site[1:]) <= int(b[1:])


def plant_at(raft, site, date):
    """Returns (habit, day, name of the hole it was first planted in, kind) or None for an empty site."""
    if raft in EXTRAS:
        crop, started, layout = EXTRAS[raft]
        return ("seedling" if layout.startswith("tray") else crop), days_between(started, date), site, "ok"
    _, _, crops, layout, sown, transplanted, *_ = RAFTS[raft]
    for since, until in [EMPTY.get(raft, {}).get(site, (None, None))]:
        if since is not None and since <= date and (not until or date < until):
            return None
    crop = next(c for c, sites, _ in crops if in_range(site, sites))
    origin = site
    for at, kind, _, from_site, _, to_site, *_ in (e for e in EVENTS if e[1] == "moved" and e[2] == raft):
        if to_site == site and at[:10] <= date:
            origin = from_site
    day = days_between(transplanted or sown, date)
    kind = "ok"
    if origin in LAGGING.get(raft, {}):
        since, pace = LAGGING[raft][origin]
        if day > since:
            day, kind = since + (day - since) * pace, "lagging"
    return ("seedling" if layout.startswith("tray") else crop), day, origin, kind
