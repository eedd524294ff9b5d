#pragma once
// The least and the most that a system can have lost in the limit's period, given a log.

#include "planning/leak_evidence.hpp"

namespace linewright {

/// Doubt about the loss between two readings: from all strays and the misfit of the curve, as
/// before a pass, and from noise alone, as before a fail.
double doubt_to_pass(const LeakEvidence& evidence);
double doubt_to_fail(const LeakEvidence& evidence);

/// How far the air's temperature may have moved the needle, unseen, before a pass.
double temperature_doubt_to_pass(const LeakEvidence& evidence);

/// The most that may have been lost, all doubts added, and never less than what the needle itself
/// lost. A minute that started below the target lost too little, and its loss is raised in
/// proportion.
double highest_loss(const LeakEvidence& evidence);

/// The least that was surely lost, all doubts taken off, by the log as it stands and without slips.
/// A test that started beyond its target lost too much, and its loss is lowered in proportion;
/// where the needle jumped between two readings, the jump may be its own.
double lowest_loss(const LeakEvidence& evidence, LossKind kind);

/// True where a leak within the limit, in air that had yet to settle, reads like this too.
bool may_be_settling(const LeakEvidence& evidence);

/// True where a change of temperature was logged that the readings themselves gainsay.
bool temperature_contradicted(const LeakEvidence& evidence);

/// How far the readings, slips left out and temperature removed, move away from rest at any time.
double largest_rise(const LeakEvidence& evidence);
/// How much of that noise, thermometer and a little drift explain.
double rise_allowed(const LeakEvidence& evidence);

}  // namespace linewright
