// SPDX-License-Identifier: MIT
#pragma once

#include "base/files.hpp"
#include "desk/history.hpp"

#include <string>

/// The open room: its file, its history of edits, and what stands in the way of studying it.
namespace rakeline::desk {

class Document {
public:
    /// A new, unsaved room.
    Document();
    Document(std::string path, room::Brief brief);

    const BriefPtr& current() const { return history_.current(); }
    const History& history() const { return history_; }
    const std::string& path() const { return path_; }  ///< empty until saved once
    bool edited() const { return history_.edited() || recovered_; }

    /// Why the current layout can't be studied; empty when it can.
    const base::Problems& problems() const { return problems_; }

    /// Takes an edited layout. A changed limits file is read anew; where that fails, the old limits
    /// stay and limits_problems() says so.
    void edit(std::string label,
              const room::Layout& layout,
              std::string_view gesture,
              const base::ReadText& read);
    const base::Problems& limits_problems() const { return limits_problems_; }

    void end_gesture();
    void undo();
    void redo();

    /// Writes to `path` and takes that as the document's own. A layout with problems is not
    /// written: it could not be opened again. A limits file named as seen from the old folder is
    /// named as seen from the new one.
    base::Problems save(const std::string& path);

private:
    friend base::Result<Document> recover_document(const std::string&, const std::string&);
    void check();
    std::string limits_seen_from(const std::string& path) const;

    std::string path_;
    History history_;
    bool recovered_ = false;
    base::Problems problems_;
    base::Problems limits_problems_;
};

/// A small plain room to begin from: one format, one projector, one block of seats.
room::Brief new_room();

base::Result<Document> open_document(const std::string& path);

/// Opens a recovery copy as edits, not yet saved, of the document that it was made of.
base::Result<Document> recover_document(const std::string& copy, const std::string& original);

}  // namespace rakeline::desk
