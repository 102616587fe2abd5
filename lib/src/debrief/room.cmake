add_room(debrief
  SOURCES
    against_plan.cpp
    chords.cpp
    crew_report.cpp
    flown_width.cpp
    sortie.cpp
    swept_piece.cpp)
