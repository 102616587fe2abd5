// What a search without success says: Bayes' rule, cell by cell.
//
// Problem: after a search that found nothing, ground that was searched well is less likely and all
//   other ground, what lies outside included, is more likely.
// Conventions: with p the probability of containment and POD the probability of detection of each
//   cell, POS = sum of p x POD is the probability that this search finds the object, and afterwards
//     p' = p (1 - POD) / (1 - POS),   outside' = outside / (1 - POS).
//   Cumulative POS of several searches: 1 - (1 - POS1)(1 - POS2)...; each POS is of its own search,
//   given that the earlier ones found nothing. POD of a cell that was not searched is 0.
// Domain: any number of cells; PODs from 0 to 1. A search that is sure to succeed (POS = 1) leaves
//   nothing to believe in: Error(value).
// Accuracy: 1e-15 of each probability; a million cells and ten searches still sum to 1 within 1e-12
//   (update_test.cpp).
// Promises: P1 the order of the cells does not change a bit; P2 two searches in turn give the
//   belief of one search with POD = 1 - (1 - POD1)(1 - POD2), within 1e-14.
// Source: Bayes' rule; B. O. Koopman, Search and Screening (1946, 1980) [from memory].
#pragma once

#include <span>

#include "sweepwright/belief/belief.hpp"

namespace sweepwright::belief {

/// Probability of success of a search: the sum of probability x POD. Throws Error(value) for lists
/// of different lengths or a POD that is not from 0 to 1.
double success(std::span<const double> probability, std::span<const double> pod);

/// Turns `probability` and `outside` into those after the search failed; returns its probability of
/// success. On an error nothing is changed.
double update(std::span<double> probability, double& outside, std::span<const double> pod);

/// The belief after a search, and the search's own probability of success.
struct Updated {
  Belief belief;  ///< its cumulative_success counts this search
  double success = 0;
};
Updated updated(Belief belief, std::span<const double> pod);

}  // namespace sweepwright::belief
