#pragma once
// What is taken for what a project leaves out of its control cables.

#include "planning/taken_sentences.hpp"

namespace linewright {

/// Of their ends, pulleys, loads, turnbuckles and of the airframe that they are tied to.
void add_taken_of_cables(const Project& project, Sentences& sentences);

}  // namespace linewright
