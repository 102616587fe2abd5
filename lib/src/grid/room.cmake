include(embed_data)
add_room(grid
  SOURCES cell.cpp chart.cpp chart_sheets.cpp clip.cpp cover.cpp cut.cpp flat.cpp flat_common.cpp
          gars.cpp georef.cpp grid.cpp lat_lon_box.cpp lat_lon_grid.cpp local.cpp mgrs.cpp
          mgrs_zone.cpp name_error.cpp quarter.cpp sheet_lattice.cpp surroundings.cpp systems.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib sweepwright_boost)
embed_data(grid chart_sheets.csv)
