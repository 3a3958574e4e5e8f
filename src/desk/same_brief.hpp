// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

namespace rakeline::desk {

/// Studies of the same brief differ at most in whether their crowd is drawn: what is worked out
/// from one of them, the crowd left alone, holds for the other.
inline bool same_brief(const study::Study* a, const study::Study* b) {
    return a == b || (a && b && a->brief == b->brief);
}

}  // namespace rakeline::desk
