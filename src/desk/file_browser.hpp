// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

/// What the file chooser lists: the folders and the matching files of one folder.
namespace rakeline::desk {

struct FolderListing {
    std::vector<std::string> folders;  ///< names, sorted, without hidden ones
    std::vector<std::string> files;    ///< names that end in `ending`, sorted; schemas left out
    std::string error;                 ///< why the folder can't be read; empty if it can
};

FolderListing list_folder(const std::string& folder, const std::string& ending);

/// The folder above, or itself at the top.
std::string folder_above(const std::string& folder);

/// Where the layouts that come with the program lie: in the folder that it was started from, beside
/// the program, or where it was installed. Empty if nowhere.
std::string layouts_folder();

/// A folder to begin in: `wanted` if it can be read, else the program's layouts, else where it was
/// started.
std::string readable_folder(const std::string& wanted);

/// What was typed, seen from `folder`: "~" stands for the home folder, absolute names stay.
std::string typed_path(const std::string& folder, const std::string& typed);

/// `path`, with `ending` added where its last part has no ending at all.
std::string with_ending(const std::string& path, const std::string& ending);

}  // namespace rakeline::desk
