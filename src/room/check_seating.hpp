// SPDX-License-Identifier: MIT
#pragma once

#include "room/check_internal.hpp"

namespace rakeline::room {

/// Where the seats stand: within the hall, on the seats' side of the screen, eyes under the
/// ceiling, rows that their arcs can hold. Needs blocks without faults of their own and at most
/// 20,000 seats. One sentence a block and rule, of the seat that breaks it most.
void check_seat_places(const Layout& layout, Findings& out);

}  // namespace rakeline::room
