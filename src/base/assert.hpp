// SPDX-License-Identifier: MIT
#pragma once

/// Invariants, checked in release too: a silently wrong number costs more trust than a stop.
/// For faults of our own code only; what a user can cause comes back as a Problem (result.hpp).
namespace rakeline::base {

[[noreturn]] void fail_assert(const char* expression, const char* file, int line);

}  // namespace rakeline::base

#define RL_ASSERT(expression)            \
    ((expression) ? static_cast<void>(0) \
                  : ::rakeline::base::fail_assert(#expression, __FILE__, __LINE__))
