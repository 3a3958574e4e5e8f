// SPDX-License-Identifier: MIT
#pragma once

#include "desk/history.hpp"
#include "study/study.hpp"

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <thread>

/// Studies the newest brief in the background. A brief that is overtaken before its turn is never
/// studied; the newest finished study is what everything draws.
namespace rakeline::desk {

struct FinishedStudy {
    std::shared_ptr<const study::Study> study;
    double took_s = 0.0;
    unsigned long serial = 0;  ///< counts from 1
};

class StudyWorker {
public:
    /// `wake` is called from the worker's thread after each finished study.
    explicit StudyWorker(std::function<void()> wake = {});
    ~StudyWorker();
    StudyWorker(const StudyWorker&) = delete;
    StudyWorker& operator=(const StudyWorker&) = delete;

    void post(BriefPtr brief);
    /// Drops what is known and what is under way: another document is open now.
    void forget();
    FinishedStudy newest() const;  ///< study null before the first
    bool busy() const;             ///< a brief waits or is being studied
    void wait_until_idle() const;

private:
    void work(const std::stop_token& stop);

    std::function<void()> wake_;
    mutable std::mutex mutex_;
    mutable std::condition_variable_any changed_;
    BriefPtr waiting_;
    bool studying_ = false;
    unsigned long document_ = 0;  ///< counts calls of forget()
    FinishedStudy newest_;
    std::jthread thread_;  ///< last: joins before the members that it uses go
};

}  // namespace rakeline::desk
