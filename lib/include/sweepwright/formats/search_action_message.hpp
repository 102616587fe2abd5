// The search action message: the whole plan as plain text, to be sent by radio or mail.
//
// Problem: units, their agencies and the on-scene co-ordinator get the plan hours before the
//   search, over whatever channel works; many carry plain text only.
// Conventions: six numbered paragraphs in the order of the manual: situation, search areas,
//   execution, co-ordination, communications, reports. Lines of at most kMessageWidth characters,
//   our own words in ASCII. Positions in degrees and decimal minutes, tracks true in three digits,
//   times local and UTC. What is not known is said to be not known.
// Promises: P1 same plan and provenance, same bytes; P2 figures are those of plan.json, rounded to
//   the places shown; P3 the cautions close it (search_action_message_test.cpp).
// Source: IAMSAR Manual Volume II, search action message, paragraphs 1 to 4 [seen in a third-party
//   copy], 5 and 6 [from memory].
#pragma once

#include <cstddef>
#include <string>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

inline constexpr std::size_t kMessageWidth = 72;

std::string write_search_action_message(const plan::Plan& plan, const Provenance& provenance);

}  // namespace sweepwright::formats
