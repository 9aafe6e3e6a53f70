-- Everything measured so far. Areas are cm2, lengths mm, fractions 0..1, times ISO 8601 with offset.
-- An absent number is NULL; an absent text is ''.

CREATE TABLE runs (
  run TEXT PRIMARY KEY,
  started_at TEXT NOT NULL,
  version TEXT NOT NULL,
  photos INTEGER NOT NULL,
  folder TEXT NOT NULL,
  published INTEGER NOT NULL            -- 0 until the folder stands in its place
);

-- One row for each photo by the SHA-256 of its bytes, whatever became of it.
CREATE TABLE photos (
  sha256 TEXT PRIMARY KEY,
  photo TEXT NOT NULL,
  settings TEXT NOT NULL,               -- hash of what besides its bytes the measure depends on
  run TEXT NOT NULL,                    -- the run that measured it
  pictured_run TEXT,                    -- the last published run with its pictures
  station TEXT NOT NULL,
  taken_at TEXT,
  clock_doubt TEXT NOT NULL,
  status TEXT NOT NULL,                 -- used, replaced, held, skipped, refused: what holds now
  reason TEXT NOT NULL,
  remedy TEXT NOT NULL,
  measured_status TEXT NOT NULL,        -- what the measurement itself said
  measured_reason TEXT NOT NULL,
  measured_remedy TEXT NOT NULL,
  sharpness REAL,
  exposure_clipped_fraction REAL,
  light_cast REAL
);

CREATE TABLE rafts (
  sha256 TEXT NOT NULL REFERENCES photos (sha256) ON DELETE CASCADE,
  place INTEGER NOT NULL,               -- its place among the rafts of the photo, from 0
  raft TEXT,
  slot TEXT NOT NULL,
  layout TEXT NOT NULL,
  pose_source TEXT NOT NULL,
  pose_error_mm REAL NOT NULL,
  mm_per_px REAL NOT NULL,
  camera_height_mm REAL NOT NULL,
  half_turn_known INTEGER NOT NULL,
  canopy_cover REAL,
  leftover_canopy_cm2 REAL,
  quality REAL NOT NULL,
  held TEXT NOT NULL,
  settled TEXT,                         -- counts, replaced, held; NULL until the run is published
  settled_why TEXT NOT NULL DEFAULT '',
  PRIMARY KEY (sha256, place)
);
CREATE INDEX rafts_by_raft ON rafts (raft);

CREATE TABLE sites (
  sha256 TEXT NOT NULL,
  place INTEGER NOT NULL,
  site TEXT NOT NULL,
  projected_area_cm2 REAL,
  projected_area_se_cm2 REAL,
  visible_area_cm2 REAL,
  closed INTEGER NOT NULL,
  shared_outline_fraction REAL NOT NULL,
  height_mm REAL NOT NULL,
  parallax_factor REAL NOT NULL,
  equivalent_diameter_mm REAL,
  largest_diameter_mm REAL,
  perimeter_mm REAL,
  solidity REAL,
  offset_x_mm REAL,
  offset_y_mm REAL,
  lab_l REAL,
  lab_a REAL,
  lab_b REAL,
  pale_fraction REAL,
  dead_fraction REAL,
  quality REAL NOT NULL,
  held TEXT NOT NULL,
  PRIMARY KEY (sha256, place, site),
  FOREIGN KEY (sha256, place) REFERENCES rafts (sha256, place) ON DELETE CASCADE
);
