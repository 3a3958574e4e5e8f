// SPDX-License-Identifier: MIT
#include "sight/crowd.hpp"

#include "base/assert.hpp"
#include "base/parallel.hpp"
#include "sight/blockers.hpp"
#include "sight/hidden_room.hpp"

#include <algorithm>
#include <memory>
#include <numeric>

namespace rakeline::sight {
namespace {

/// Crowds below which a second thread costs more than it saves.
constexpr std::size_t kLeastCrowds = 4;

/// The room of one thread: a crowd sits down, and each seat says whether it is clear.
class Auditorium {
public:
    Auditorium(const SightInput& in, const std::vector<Wall>& walls, int columns)
        : in_(in), columns_(columns) {
        seat_crowd(in.seats, in.audience, 0, crowd_);
        views_.reserve(in.openings.size());  // the rooms look at these
        for (const picture::Opening& opening : in.openings) {
            views_.push_back({in.surface, opening, crowd_.eyes, crowd_.heads, walls});
            rooms_.push_back(std::make_unique<hidden::Room>(views_.back(), columns,
                                                            hidden::best_instruction_set()));
        }
    }

    void seat(int crowd) { seat_crowd(in_.seats, in_.audience, crowd, crowd_); }

    /// To be called for each format that is asked of the crowd that sits.
    void take_heads(std::size_t format) {
        views_[format].eyes = crowd_.eyes;
        views_[format].heads = crowd_.heads;
        rooms_[format]->repack_heads();
    }

    bool clear(std::size_t format, int seat) const {
        hidden::SeatBlocks blocks;
        const hidden::Room& room = *rooms_[format];
        room.blocks(room.place(seat), room.all_blocks(), false, blocks);
        double hidden = 0.0;
        for (int b = 0; b < columns_ / hidden::kBlock; ++b)
            hidden += static_cast<double>(blocks.hidden[static_cast<std::size_t>(b)]);
        return hidden <= (1.0 - kClearFraction) * columns_;
    }

private:
    const SightInput& in_;
    int columns_;
    SeatedCrowd crowd_;
    std::vector<HiddenInput> views_;
    std::vector<std::unique_ptr<hidden::Room>> rooms_;
};

/// What one format still asks of a batch.
struct Question {
    std::vector<int> open;  ///< seats whose interval is too wide
    std::vector<int> rest;  ///< the others, for the room's chance; the likeliest to fail first
    bool room_open = true;

    bool closed() const { return open.empty() && !room_open; }
};

/// What the crowds of a batch answered, crowd by crowd.
struct Answers {
    std::vector<char> open;  ///< per crowd and seat of Question::open: clear
    std::vector<char> room;  ///< per crowd: every seat clear
};

bool is_wide(const Chance& chance, double precision) {
    return chance.drawn == 0 || wilson_interval(chance).half_width() > precision;
}

Question question_of(const FormatCrowd& format, double precision) {
    Question out;
    out.room_open = is_wide(format.room, precision);
    for (std::size_t i = 0; i < format.seats.size(); ++i) {
        const bool open = is_wide(format.seats[i], precision);
        (open ? out.open : out.rest).push_back(static_cast<int>(i));
    }
    std::ranges::stable_sort(
        out.rest, {}, [&](int i) { return format.seats[static_cast<std::size_t>(i)].share(); });
    return out;
}

/// One crowd's answers in one format. The room stops at the first seat that is not clear.
void answer(const Auditorium& hall,
            std::size_t format,
            const Question& question,
            std::size_t crowd,
            Answers& out) {
    const std::size_t count = question.open.size();
    bool all = true;
    for (std::size_t i = 0; i < count; ++i) {
        const bool clear = hall.clear(format, question.open[i]);
        out.open[crowd * count + i] = clear ? 1 : 0;
        all = all && clear;
    }
    if (!question.room_open) return;
    const auto clear = [&](int seat) { return hall.clear(format, seat); };
    out.room[crowd] = all && std::ranges::all_of(question.rest, clear) ? 1 : 0;
}

class Sampling {
public:
    Sampling(const SightInput& in, const CrowdRun& run)
        : in_(in), run_(run), walls_(full_house(in.seats, in.blocks, in.audience).walls) {
        study_.crowd = in.audience.crowd;
        FormatCrowd empty;
        empty.seats.resize(in.seats.seats.size());
        study_.formats.assign(in.openings.size(), empty);
    }

    std::optional<CrowdStudy> work() {
        ask();
        while (open_ > 0 && study_.drawn < kMostCrowds) {
            draw_batch();
            if (run_.stop.stop_requested()) return std::nullopt;
            count();
            ask();
            if (run_.progress) run_.progress({study_.drawn, open_, chances()});
        }
        study_.reached = open_ == 0;
        return std::move(study_);
    }

private:
    int chances() const {
        return static_cast<int>(in_.openings.size() * (in_.seats.seats.size() + 1));
    }

    void ask() {
        questions_.clear();
        open_ = 0;
        if (in_.seats.seats.empty()) return;
        for (const FormatCrowd& format : study_.formats) {
            const Question& q =
                questions_.emplace_back(question_of(format, study_.crowd.precision));
            open_ += static_cast<int>(q.open.size()) + (q.room_open ? 1 : 0);
        }
    }

    void draw_batch() {
        answers_.resize(questions_.size());
        for (std::size_t f = 0; f < questions_.size(); ++f) {
            answers_[f].open.assign(kCrowdBatch * questions_[f].open.size(), 0);
            answers_[f].room.assign(kCrowdBatch, 0);
        }
        base::parallel_chunks(
            kCrowdBatch, kLeastCrowds,
            [&](std::size_t begin, std::size_t end) { draw_crowds(begin, end); }, run_.threads);
    }

    void draw_crowds(std::size_t begin, std::size_t end) {
        Auditorium hall(in_, walls_, run_.columns);
        for (std::size_t k = begin; k < end; ++k) {
            if (run_.stop.stop_requested()) return;
            hall.seat(study_.drawn + static_cast<int>(k));
            for (std::size_t f = 0; f < questions_.size(); ++f) {
                if (questions_[f].closed()) continue;
                hall.take_heads(f);
                answer(hall, f, questions_[f], k, answers_[f]);
            }
        }
    }

    void count() {
        study_.drawn += kCrowdBatch;
        for (std::size_t f = 0; f < questions_.size(); ++f) {
            const std::vector<int>& open = questions_[f].open;
            for (std::size_t i = 0; i < open.size(); ++i) {
                Chance& chance = study_.formats[f].seats[static_cast<std::size_t>(open[i])];
                chance.drawn += kCrowdBatch;
                for (std::size_t k = 0; k < kCrowdBatch; ++k)
                    chance.clear += answers_[f].open[k * open.size() + i];
            }
            if (!questions_[f].room_open) continue;
            Chance& room = study_.formats[f].room;
            room.drawn += kCrowdBatch;
            room.clear =
                std::accumulate(answers_[f].room.begin(), answers_[f].room.end(), room.clear);
        }
    }

    const SightInput& in_;
    const CrowdRun& run_;
    std::vector<Wall> walls_;
    CrowdStudy study_;
    std::vector<Question> questions_;
    std::vector<Answers> answers_;
    int open_ = 0;
};

}  // namespace

std::optional<CrowdStudy> sample_crowds(const SightInput& in, const CrowdRun& run) {
    RL_ASSERT(hidden::PackedPicture::fits(run.columns) && run.columns >= hidden::kBlock);
    return Sampling(in, run).work();
}

}  // namespace rakeline::sight
