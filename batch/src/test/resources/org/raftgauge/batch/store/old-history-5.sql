-- A history as a program of schema 5 left it; frozen, not to be changed when the schema is.
CREATE TABLE runs (
  run TEXT PRIMARY KEY,
  started_at TEXT NOT NULL,
  version TEXT NOT NULL,
  photos INTEGER NOT NULL,
  folder TEXT NOT NULL,
  published INTEGER NOT NULL
);


CREATE TABLE photos (
  sha256 TEXT PRIMARY KEY,
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
  light_cast REAL
);

CREATE TABLE rafts (
  sha256 TEXT NOT NULL REFERENCES photos (sha256) ON DELETE CASCADE,
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
ALTER TABLE rafts ADD COLUMN ruler_sites TEXT NOT NULL DEFAULT '';

ALTER TABLE rafts ADD COLUMN notes TEXT NOT NULL DEFAULT '';
ALTER TABLE photos ADD COLUMN shift_right_px REAL;
ALTER TABLE photos ADD COLUMN shift_down_px REAL;
ALTER TABLE photos ADD COLUMN turn_deg REAL;

ALTER TABLE photos ADD COLUMN edge_blur_px REAL;
ALTER TABLE photos ADD COLUMN edge_blur_cells_px TEXT NOT NULL DEFAULT '';
ALTER TABLE photos ADD COLUMN haze_fraction REAL;

ALTER TABLE photos ADD COLUMN board_light REAL;
ALTER TABLE photos ADD COLUMN light_across_ln REAL;
ALTER TABLE photos ADD COLUMN light_down_ln REAL;
ALTER TABLE photos ADD COLUMN vignetting_fraction REAL;
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
INSERT INTO runs VALUES ('r-1', '2026-04-12T07:00:00+01:00', '0.0.9', 1, '/crops/runs/2026-04-11', 1);
INSERT INTO photos (sha256, photo, settings, run, pictured_run, station, taken_at, clock_doubt, status,
  reason, remedy, measured_status, measured_reason, measured_remedy, sharpness, exposure_clipped_fraction, light_cast)
  VALUES ('abababababababababababababababababababababababababababababababab', 'a.jpg', 's', 'r-1', 'r-1', 'bench', '2026-04-11T18:00:00+01:00', '', 'used',
  '', '', 'used', '', '', 0.91, 0.0123, NULL);
INSERT INTO rafts (sha256, place, raft, slot, layout, pose_source, pose_error_mm, mm_per_px, camera_height_mm,
  half_turn_known, canopy_cover, leftover_canopy_cm2, quality, held, settled, settled_why)
  VALUES ('abababababababababababababababababababababababababababababababab', 0, 'R1', '', 'deck-4', 'markers', 0.41, 0.5, 1600, 1, 0.25, 1.5, 0.9, '', 'counts', '');
INSERT INTO sites VALUES ('abababababababababababababababababababababababababababababababab', 0, 'A1', 10.125, 0.2, 10, 0, 0, 20, 0.95, 35.68, 40, 130, 0.9, -1.26, 2, 55, -31, 34,
  0.01, 0, 0.8, '', '', NULL, NULL, NULL);
INSERT INTO sites VALUES ('abababababababababababababababababababababababababababababababab', 0, 'A2', 20.25, 0.4, 20, 0, 0, 20, 0.95, 35.68, 40, 130, 0.9, -1.26, 2, 55, -31, 34,
  0.01, 0, 0.8, '', '', NULL, NULL, NULL);
UPDATE rafts SET ruler_sites = 'A1', notes = 'the camera has moved';
UPDATE photos SET haze_fraction = 0.0125, edge_blur_px = 0.75, edge_blur_cells_px = '0.5;';
UPDATE photos SET version = '0.0.9';
-- How far the rows of a pair of cameras lie apart, px.
ALTER TABLE photos ADD COLUMN pair_rows_px REAL;
ALTER TABLE earlier_photos ADD COLUMN pair_rows_px REAL;
UPDATE photos SET pair_rows_px = 1.5;
PRAGMA user_version = 5;
