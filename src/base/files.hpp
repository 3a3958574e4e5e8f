// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <functional>
#include <string>
#include <string_view>

/// Files, for the callers at the top; the computing folders never open one.
namespace rakeline::base {

/// How a computing folder is handed the means to read a file that a document names.
using ReadText = std::function<Result<std::string>(const std::string& path)>;

/// The whole file as bytes (at most 64 MiB), or a Problem that names it.
Result<std::string> read_text_file(const std::string& path);

/// Writes beside the target and renames over it: a failed save leaves the old file whole.
/// Returns no problem on success.
Problems write_file(const std::string& path, std::string_view bytes);

/// `name` as seen from the folder that holds the file `beside`; absolute names stay.
std::string path_beside(const std::string& beside, const std::string& name);

/// A file that `from` names as `name`, as the file `to` would name it; absolute names stay, and so
/// does one that has no way from there.
std::string path_seen_from(const std::string& from, const std::string& name, const std::string& to);

}  // namespace rakeline::base
