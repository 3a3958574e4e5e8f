// SPDX-License-Identifier: MIT
#include "base/csv.hpp"

#include <optional>

namespace rakeline::base {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

class CsvReader {
public:
    CsvReader(std::string_view text, const std::string& file) : text_(text), file_(file) {
        if (text_.starts_with(kByteOrderMark)) text_.remove_prefix(kByteOrderMark.size());
    }

    /// The next record, or nothing at the end of the text or at a fault.
    std::optional<CsvRecord> next() {
        while (!ended() && !fault && (at_line_end() || peek() == '#'))
            skip_line();
        if (ended() || fault) return std::nullopt;
        CsvRecord record{line_, {}};
        do {
            record.cells.push_back(cell());
        } while (!fault && take(','));
        if (!fault && !ended() && !take_line_end()) refuse("what follows a cell is no comma");
        if (fault) return std::nullopt;
        return record;
    }

    int line() const { return line_; }
    std::optional<Problem> fault;

private:
    bool ended() const { return at_ >= text_.size(); }
    char peek() const { return ended() ? '\0' : text_[at_]; }
    bool at_line_end() const {
        return peek() == '\n' || (peek() == '\r' && text_.substr(at_).starts_with("\r\n"));
    }
    bool take(char c) {
        if (ended() || peek() != c) return false;
        ++at_;
        return true;
    }
    bool take_line_end() {
        if (ended() || !at_line_end()) return false;
        at_ += peek() == '\r' ? 2 : 1;
        ++line_;
        return true;
    }
    void skip_line() {
        while (!ended() && !take_line_end())
            ++at_;
    }
    void skip_blanks() {
        while (!ended() && is_blank(peek()))
            ++at_;
    }
    void refuse(const std::string& what) {
        if (fault) return;
        fault = Problem{.file = file_,
                        .line = line_,
                        .where = {},
                        .what = what,
                        .mend = "save the table as text, cells parted by commas"};
    }
    bool control() const {
        const auto c = static_cast<unsigned char>(peek());
        return (c < 0x20 && c != '\t') || c == 0x7F;
    }

    std::string cell() {
        skip_blanks();
        if (!ended() && peek() == '"') return quoted();
        std::string out;
        while (!ended() && !at_line_end() && peek() != ',') {
            if (peek() == '"') refuse("a quote stands inside a cell that does not begin with one");
            if (control()) refuse("a control character is in the text");
            if (fault) return out;
            out += text_[at_++];
        }
        while (!out.empty() && is_blank(out.back()))
            out.pop_back();
        return out;
    }

    std::string quoted() {
        const int from = line_;
        std::string out;
        ++at_;
        while (!ended()) {
            if (take('"')) {
                if (!take('"')) {
                    skip_blanks();
                    return out;
                }
                out += '"';
            } else if (at_line_end()) {
                take_line_end();
                out += '\n';
            } else if (control()) {
                refuse("a control character is in the text");
                return out;
            } else {
                out += text_[at_++];
            }
        }
        line_ = from;
        refuse("a quote that opens here never closes");
        return out;
    }

    std::string_view text_;
    const std::string& file_;
    std::size_t at_ = 0;
    int line_ = 1;
};

}  // namespace

Result<std::vector<CsvRecord>> read_csv(std::string_view text,
                                        const std::string& file,
                                        std::size_t records_most) {
    CsvReader reader(text, file);
    std::vector<CsvRecord> out;
    while (auto record = reader.next()) {
        if (out.size() == records_most) {
            return Problem{file,
                           record->line,
                           {},
                           "there are more than " + std::to_string(records_most) + " rows",
                           "keep to the rows that are meant"};
        }
        out.push_back(std::move(*record));
    }
    if (reader.fault) return *reader.fault;
    if (out.empty()) return Problem{file, 0, {}, "the file holds no rows", "put a table into it"};
    return out;
}

}  // namespace rakeline::base
