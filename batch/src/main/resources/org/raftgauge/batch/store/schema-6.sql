-- Where plants' canopies meet: a line each, of site, neighbour, ln of the ratio of their radii as judged, and what either
-- takes of the other at each step of that ratio, mm2, separated by semicolons.
ALTER TABLE rafts ADD COLUMN borders TEXT NOT NULL DEFAULT '';
ALTER TABLE earlier_rafts ADD COLUMN borders TEXT NOT NULL DEFAULT '';
