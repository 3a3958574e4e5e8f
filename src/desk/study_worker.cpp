// SPDX-License-Identifier: MIT
#include "desk/study_worker.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

/// While a number is being dragged briefs come thick and fast: their crowds would never be done.
constexpr std::chrono::milliseconds kSettled{200};

/// One is left to the window.
unsigned sampling_threads() {
    return std::max(2U, std::thread::hardware_concurrency()) - 1;
}

/// Null where the study lacks what is chosen.
std::shared_ptr<const drawing::RoomMesh> mesh_of(const study::Study& study, const RoomLook& look) {
    const room::Layout& layout = study.layout();
    if (look.format >= static_cast<int>(layout.formats.size()) ||
        look.projector >= static_cast<int>(layout.projectors.size()))
        return nullptr;
    drawing::DrawingChoice choice;
    choice.projector = look.projector;
    choice.format = look.format;
    return std::make_shared<const drawing::RoomMesh>(drawing::room_mesh(study, choice));
}

}  // namespace

StudyWorker::StudyWorker(std::function<void()> wake)
    : wake_(std::move(wake)), thread_([this](const std::stop_token& stop) { work(stop); }) {}

StudyWorker::~StudyWorker() {
    thread_.request_stop();
    {
        const std::scoped_lock lock(mutex_);
        stop_sampling();
    }
    changed_.notify_all();
}

void StudyWorker::post(BriefPtr brief, std::optional<RoomLook> look) {
    {
        const std::scoped_lock lock(mutex_);
        waiting_ = std::move(brief);
        look_ = look;
        stop_sampling();
    }
    changed_.notify_all();
}

void StudyWorker::forget() {
    const std::scoped_lock lock(mutex_);
    waiting_ = nullptr;
    newest_.study = nullptr;
    newest_.mesh = nullptr;
    ++document_;
    stop_sampling();
}

/// With the lock held.
void StudyWorker::stop_sampling() {
    sampling_stop_.request_stop();
    sampling_.reset();
}

FinishedStudy StudyWorker::newest() const {
    const std::scoped_lock lock(mutex_);
    return newest_;
}

bool StudyWorker::busy() const {
    const std::scoped_lock lock(mutex_);
    return studying_ || waiting_ != nullptr;
}

std::optional<sight::CrowdProgress> StudyWorker::sampling() const {
    const std::scoped_lock lock(mutex_);
    return sampling_;
}

void StudyWorker::wait_until_idle() const {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return !studying_ && waiting_ == nullptr; });
}

void StudyWorker::wait_until_idle(std::chrono::duration<double> most) const {
    std::unique_lock lock(mutex_);
    changed_.wait_for(lock, most, [this] { return !studying_ && waiting_ == nullptr; });
}

bool StudyWorker::wait_until_sampled(std::chrono::milliseconds most) const {
    std::unique_lock lock(mutex_);
    return changed_.wait_for(lock, most, [this] {
        return !studying_ && waiting_ == nullptr && newest_.study && newest_.study->crowd;
    });
}

void StudyWorker::wake() const {
    changed_.notify_all();
    if (wake_) wake_();
}

std::optional<StudyWorker::Job> StudyWorker::next_job(const std::stop_token& stop) {
    std::unique_lock lock(mutex_);
    if (!changed_.wait(lock, stop, [this] { return waiting_ != nullptr; })) return std::nullopt;
    studying_ = true;
    return Job{std::exchange(waiting_, nullptr), look_, document_};
}

/// With the lock held: what was overtaken by another document is dropped.
void StudyWorker::publish(const Job& job, FinishedStudy finished) {
    if (job.document != document_) return;
    finished.serial = newest_.serial + 1;
    newest_ = std::move(finished);
}

std::shared_ptr<const study::Study> StudyWorker::study_job(const Job& job,
                                                           const std::stop_token& stop) {
    const auto start = std::chrono::steady_clock::now();
    study::Study made = cache_.update(job.brief);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    if (auto crowd = cache_.known_crowd(made))
        made = study::with_crowd(std::move(made), std::move(crowd));
    const auto study = std::make_shared<const study::Study>(std::move(made));
    FinishedStudy finished{.study = study, .took_s = took.count()};
    finished.look = job.look.value_or(RoomLook{});
    if (job.look) finished.mesh = mesh_of(*study, *job.look);
    const std::scoped_lock lock(mutex_);
    publish(job, std::move(finished));
    studying_ = false;
    if (!study->crowd && waiting_ == nullptr && job.document == document_ &&
        !stop.stop_requested()) {
        sampling_stop_ = {};
        sampling_ = sight::CrowdProgress{};
    }
    return study;
}

void StudyWorker::sample(const Job& job, const study::Study& study, const std::stop_token& stop) {
    std::stop_token told;
    {
        std::unique_lock lock(mutex_);
        told = sampling_stop_.get_token();
        if (!sampling_) return;
        changed_.wait_for(lock, stop, kSettled, [&] { return told.stop_requested(); });
    }
    const auto report = [&](const sight::CrowdProgress& progress) {
        {
            const std::scoped_lock lock(mutex_);
            if (sampling_) sampling_ = progress;
        }
        wake();
    };
    auto crowd = study::sample_crowd(
        study, {.stop = told, .progress = report, .threads = sampling_threads()});
    if (!crowd) return;
    cache_.remember_crowd(study, crowd);
    auto whole = std::make_shared<const study::Study>(study::with_crowd(study, std::move(crowd)));
    const std::scoped_lock lock(mutex_);
    if (!sampling_ || told.stop_requested()) return;
    FinishedStudy finished = newest_;  // of the same room: its triangles stay
    finished.study = std::move(whole);
    publish(job, std::move(finished));
    sampling_.reset();
}

void StudyWorker::work(const std::stop_token& stop) {
    while (const auto job = next_job(stop)) {
        const auto study = study_job(*job, stop);
        wake();
        if (study->crowd) continue;
        sample(*job, *study, stop);
        wake();
    }
}

}  // namespace rakeline::desk
