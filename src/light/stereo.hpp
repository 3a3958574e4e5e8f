// SPDX-License-Identifier: MIT
#pragma once

/// Stereo by polarised light from a digital machine.
namespace rakeline::light {

/// Luminance at the eye, behind stereo system and glasses, over that of the same machine's flat
/// white picture on the sheet: about 16 cd/m2 at the eye where the sheet has 150 cd/m2, or with
/// another system 110.
/// Source: CST/FNCF booth guide (2010), p. 44, as reported. Systems differ: the maker's own share,
/// or a meter behind the glasses, goes before these.
inline constexpr double kStereoShareLeast = 16.0 / 150.0;
inline constexpr double kStereoShareMost = 16.0 / 110.0;

}  // namespace rakeline::light
