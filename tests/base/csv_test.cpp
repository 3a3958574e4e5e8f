// SPDX-License-Identifier: MIT
#include "base/csv.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace rakeline;
using Cells = std::vector<std::string>;

namespace {

base::Result<std::vector<base::CsvRecord>> read(std::string_view text) {
    return base::read_csv(text, "t.csv", 100);
}

void check_refused(std::string_view text, int line, const std::string& part) {
    const auto table = read(text);
    REQUIRE_FALSE(table);
    const base::Problem& problem = table.problems().front();
    INFO(base::text(problem));
    CHECK(problem.file == "t.csv");
    CHECK(problem.line == line);
    CHECK(problem.what.find(part) != std::string::npos);
    CHECK_FALSE(problem.mend.empty());
}

}  // namespace

TEST_SUITE("base/csv") {
    TEST_CASE(
        "cells and lines come back, with LF or CRLF, a byte order mark, or no last line end") {
        for (const char* text : {"a,b\n1, 2 \n", "a,b\r\n1, 2 \r\n",
                                 "\xEF\xBB\xBF"
                                 "a,b\n1, 2 "}) {
            const auto table = read(text);
            REQUIRE(table);
            REQUIRE(table->size() == 2);
            CHECK((*table)[0].cells == Cells{"a", "b"});
            CHECK((*table)[1].cells == Cells{"1", "2"});
            CHECK((*table)[1].line == 2);
        }
    }

    TEST_CASE("a quoted cell holds commas, quotes and line ends, and lines are counted on") {
        const auto table = read("\"a,\"\"b\"\"\" ,c\n\"two\nlines\",\nlast,row\n");
        REQUIRE(table);
        REQUIRE(table->size() == 3);
        CHECK((*table)[0].cells == Cells{"a,\"b\"", "c"});
        CHECK((*table)[1].cells == Cells{"two\nlines", ""});
        CHECK((*table)[2].line == 4);
    }

    TEST_CASE("empty lines and lines that begin with # are passed over and counted") {
        const auto table = read("# what this is\n\na\n\r\n# more\nb\n");
        REQUIRE(table);
        REQUIRE(table->size() == 2);
        CHECK((*table)[0].line == 3);
        CHECK((*table)[1].line == 6);
    }

    TEST_CASE("refuses: what is no such table, naming the line") {
        check_refused("", 0, "no rows");
        check_refused("# only this\n", 0, "no rows");
        check_refused("a\nb\"c\n", 2, "quote");
        check_refused("a\n\"b\nc\n", 2, "never closes");
        check_refused("a\n\"b\"c\n", 2, "no comma");
        check_refused(std::string_view("a\0b\n", 4), 1, "control");
        check_refused("a\nb\rc\n", 2, "control");
        CHECK_FALSE(base::read_csv("a\nb\nc\n", "t.csv", 2));
        CHECK(base::read_csv("a\nb\n", "t.csv", 2));
    }

    TEST_CASE("round trip: cells of any letters, quoted, come back") {
        std::mt19937 random(31);
        const std::string letters = "a ,\"\n#;0.\t";
        for (int i = 0; i < 300; ++i) {
            std::vector<Cells> rows(1 + random() % 4, Cells(3));
            std::string text;
            for (Cells& row : rows) {
                for (std::size_t c = 0; c < row.size(); ++c) {
                    for (std::size_t n = random() % 6; n > 0; --n)
                        row[c] += letters[random() % letters.size()];
                    text += c ? "," : "";
                    text += '"';
                    for (const char letter : row[c])
                        text += letter == '"' ? std::string("\"\"") : std::string(1, letter);
                    text += '"';
                }
                text += random() % 2 ? "\n" : "\r\n";
            }
            const auto table = read(text);
            REQUIRE(table);
            REQUIRE(table->size() == rows.size());
            for (std::size_t r = 0; r < rows.size(); ++r)
                CHECK((*table)[r].cells == rows[r]);
        }
    }

    TEST_CASE("property: no bytes at all make it fail other than by a problem") {
        std::mt19937 random(32);
        const std::string letters("a,\"\n\r#\xEF\0 ", 9);
        for (int i = 0; i < 3000; ++i) {
            std::string text;
            for (std::size_t n = random() % 24; n > 0; --n)
                text += letters[random() % letters.size()];
            const auto table = read(text);
            if (!table) CHECK_FALSE(table.problems().front().what.empty());
        }
    }
}
