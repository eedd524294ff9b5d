#pragma once
// Where the program's output goes.

namespace linewright {

/// True where somebody reads standard output, or standard error, at a terminal.
bool output_is_terminal();
bool errors_are_terminal();

/// Makes bytes written to standard output arrive as they are, and a reader that goes away an error
/// of the stream instead of the program's end. Called once, before anything is written.
void prepare_output();

}  // namespace linewright
