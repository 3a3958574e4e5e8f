// SPDX-License-Identifier: MIT
#include "desk/study_worker.hpp"

#include <chrono>

namespace rakeline::desk {

StudyWorker::StudyWorker(std::function<void()> wake)
    : wake_(std::move(wake)), thread_([this](const std::stop_token& stop) { work(stop); }) {}

StudyWorker::~StudyWorker() {
    thread_.request_stop();
    changed_.notify_all();
}

void StudyWorker::post(BriefPtr brief) {
    {
        const std::scoped_lock lock(mutex_);
        waiting_ = std::move(brief);
    }
    changed_.notify_all();
}

void StudyWorker::forget() {
    const std::scoped_lock lock(mutex_);
    waiting_ = nullptr;
    newest_.study = nullptr;
    ++document_;
}

FinishedStudy StudyWorker::newest() const {
    const std::scoped_lock lock(mutex_);
    return newest_;
}

bool StudyWorker::busy() const {
    const std::scoped_lock lock(mutex_);
    return studying_ || waiting_ != nullptr;
}

void StudyWorker::wait_until_idle() const {
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return !studying_ && waiting_ == nullptr; });
}

void StudyWorker::work(const std::stop_token& stop) {
    study::StudyCache cache;
    while (true) {
        BriefPtr brief;
        unsigned long document = 0;
        {
            std::unique_lock lock(mutex_);
            if (!changed_.wait(lock, stop, [this] { return waiting_ != nullptr; })) return;
            brief = std::exchange(waiting_, nullptr);
            studying_ = true;
            document = document_;
        }
        const auto start = std::chrono::steady_clock::now();
        auto study = std::make_shared<const study::Study>(cache.update(std::move(brief)));
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
        {
            const std::scoped_lock lock(mutex_);
            if (document == document_)
                newest_ = {std::move(study), took.count(), newest_.serial + 1};
            studying_ = false;
        }
        changed_.notify_all();
        if (wake_) wake_();
    }
}

}  // namespace rakeline::desk
