-- Which program made a measure: its version, and the hash of the code that measures.
ALTER TABLE photos ADD COLUMN version TEXT NOT NULL DEFAULT '';
ALTER TABLE photos ADD COLUMN measuring_code TEXT NOT NULL DEFAULT '';
UPDATE photos SET version = coalesce((SELECT r.version FROM runs r WHERE r.run = photos.run), '');
CREATE INDEX photos_by_name ON photos (photo);

-- What people corrected. A row is never changed or taken away: what no longer holds is undone by another row.
CREATE TABLE corrections (
  correction INTEGER PRIMARY KEY,       -- counted from 1
  kind TEXT NOT NULL,                   -- exclude, move, clock, undo
  entered_at TEXT NOT NULL,
  entered_by TEXT NOT NULL,
  reason TEXT NOT NULL,
  sha256 TEXT NOT NULL DEFAULT '',      -- of the photo, '' for an undo
  photo TEXT NOT NULL DEFAULT '',       -- its path when it was entered
  raft TEXT NOT NULL DEFAULT '',        -- move: the raft as measured, '' where nothing told it
  to_raft TEXT NOT NULL DEFAULT '',     -- move: the raft it is
  shift_s INTEGER NOT NULL DEFAULT 0,   -- clock: seconds added to the photo's time
  undoes INTEGER NOT NULL DEFAULT 0     -- undo: the correction that no longer holds
);

-- Measures that gave way to those of another program or book: the columns of photos, rafts and sites in the same order
-- behind the number of the measure.
CREATE TABLE earlier_photos (
  measure INTEGER PRIMARY KEY,          -- counted from 1
  sha256 TEXT NOT NULL,
  photo TEXT NOT NULL,
  settings TEXT NOT NULL,
  run TEXT NOT NULL,
  pictured_run TEXT,
  station TEXT NOT NULL,
  taken_at TEXT,
  clock_doubt TEXT NOT NULL,
  status TEXT NOT NULL,
  reason TEXT NOT NULL,
  remedy TEXT NOT NULL,
  measured_status TEXT NOT NULL,
  measured_reason TEXT NOT NULL,
  measured_remedy TEXT NOT NULL,
  sharpness REAL,
  exposure_clipped_fraction REAL,
  light_cast REAL,
  shift_right_px REAL,
  shift_down_px REAL,
  turn_deg REAL,
  edge_blur_px REAL,
  edge_blur_cells_px TEXT NOT NULL,
  haze_fraction REAL,
  board_light REAL,
  light_across_ln REAL,
  light_down_ln REAL,
  vignetting_fraction REAL,
  version TEXT NOT NULL,
  measuring_code TEXT NOT NULL
);
CREATE INDEX earlier_photos_by_sha256 ON earlier_photos (sha256);

CREATE TABLE earlier_rafts (
  measure INTEGER NOT NULL REFERENCES earlier_photos (measure),
  sha256 TEXT NOT NULL,
  place INTEGER NOT NULL,
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
  settled TEXT,
  settled_why TEXT NOT NULL,
  ruler_sites TEXT NOT NULL,
  notes TEXT NOT NULL,
  PRIMARY KEY (measure, place)
);

CREATE TABLE earlier_sites (
  measure INTEGER NOT NULL,
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
  height_seen_by TEXT NOT NULL,
  height_p95_mm REAL,
  canopy_volume_cm3 REAL,
  height_seen_fraction REAL,
  PRIMARY KEY (measure, place, site),
  FOREIGN KEY (measure, place) REFERENCES earlier_rafts (measure, place)
);
-- The height of a plant as a second camera saw it: stereo, depth, or '' where the height is from model or ruler.
ALTER TABLE sites ADD COLUMN height_seen_by TEXT NOT NULL DEFAULT '';
ALTER TABLE sites ADD COLUMN height_p95_mm REAL;
ALTER TABLE sites ADD COLUMN canopy_volume_cm3 REAL;
ALTER TABLE sites ADD COLUMN height_seen_fraction REAL;
