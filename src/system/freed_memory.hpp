#pragma once

namespace linewright {

/// Gives memory that is free again back to the system, where its library keeps such memory. For use
/// before much is taken in one piece, which would not fit into what was freed.
void give_back_freed_memory();

}  // namespace linewright
