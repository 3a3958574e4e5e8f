// SPDX-License-Identifier: MIT
#include "study/change_book.hpp"

namespace rakeline::study {
namespace {

void add_list(const Study& study,
              const ListedMoves& list,
              const ChangeWanted& wanted,
              ChangeBook& book) {
    if (list.from == list.to && !(wanted.from && wanted.to)) return;
    if (wanted.from.value_or(list.from) != list.from) return;
    if (wanted.to.value_or(list.to) != list.to) return;
    book.lists.push_back(list);
    book.lists.back().moves = moves(study, list.projector, list.from, list.to);
}

/// Each pair of formats next to its way back.
void add_lists(const Study& study,
               const ChangeSheet& sheet,
               const ChangeWanted& wanted,
               ChangeBook& book) {
    for (std::size_t i = 0; i < sheet.formats.size(); ++i) {
        for (std::size_t j = i; j < sheet.formats.size(); ++j) {
            const int a = sheet.formats[i], b = sheet.formats[j];
            add_list(study, {sheet.projector, a, b, {}}, wanted, book);
            if (i != j) add_list(study, {sheet.projector, b, a, {}}, wanted, book);
        }
    }
}

}  // namespace

ChangeBook change_book(const Study& study, const ChangeWanted& wanted) {
    ChangeBook book;
    for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
        if (wanted.projector.value_or(p) != p) continue;
        book.sheets.push_back(change_sheet(study, p));
        add_lists(study, book.sheets.back(), wanted, book);
    }
    return book;
}

}  // namespace rakeline::study
