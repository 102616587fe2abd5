add_room(debrief
  SOURCES
    against_plan.cpp
    cell_outline.cpp
    chords.cpp
    coverage_figures.cpp
    coverage_frame.cpp
    coverage_map.cpp
    crew_match.cpp
    crew_report.cpp
    debriefing.cpp
    detection_integral.cpp
    flown_width.cpp
    gather.cpp
    grid_coverage.cpp
    holes.cpp
    missed_raster.cpp
    pass_raster.cpp
    sortie.cpp
    straight_runs.cpp
    swath_rows.cpp
    swept_piece.cpp
    swept_raster.cpp
    track_ground.cpp
  LIBRARIES fmt::fmt)
# Loops over cells run several at a time; no result depends on either.
target_compile_options(sweepwright_room_debrief PRIVATE -fno-math-errno -fno-trapping-math)
