// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>
#include <utility>

/// One kind of work done behind the window, the newest question first: one that is overtaken before
/// its turn is never worked on, work that is overtaken is told to stop, and the newest answer stays
/// until the next. The same question has the same answer, so it is not worked on twice in a row.
namespace rakeline::desk {

template <class Question, class Answer>
class Background {
public:
    /// May leave off, with no answer, once it is told to stop.
    using Work = std::function<std::optional<Answer>(const Question&, const std::stop_token& stop)>;

    struct Finished {
        std::shared_ptr<const Answer> answer;  ///< null before the first
        double took_s = 0.0;
        unsigned long serial = 0;  ///< counts from 1
    };

    /// `work` and `wake` are called from the thread behind, `wake` after each answer.
    Background(Work work, std::function<void()> wake)
        : work_(std::move(work)),
          wake_(std::move(wake)),
          thread_([this](const std::stop_token& stop) { run(stop); }) {}
    ~Background() {
        thread_.request_stop();
        {
            const std::scoped_lock lock(mutex_);
            working_stop_.request_stop();
        }
        changed_.notify_all();
    }
    Background(const Background&) = delete;
    Background& operator=(const Background&) = delete;

    void ask(Question question) {
        {
            const std::scoped_lock lock(mutex_);
            if (asked_ == question) return;
            asked_ = question;
            waiting_ = std::move(question);
            working_stop_.request_stop();
        }
        changed_.notify_all();
    }
    /// Drops what waits or is under way; the newest answer stays.
    void cancel() {
        const std::scoped_lock lock(mutex_);
        drop();
    }
    /// Drops what is known, too.
    void forget() {
        const std::scoped_lock lock(mutex_);
        drop();
        asked_.reset();
        newest_.answer = nullptr;
        ++forgotten_;
    }
    Finished newest() const {
        const std::scoped_lock lock(mutex_);
        return newest_;
    }
    bool busy() const {  ///< a question waits or is being worked on
        const std::scoped_lock lock(mutex_);
        return !idle();
    }
    void wait_until_idle() const {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [this] { return idle(); });
    }
    /// The same, but no longer than this.
    void wait_until_idle(std::chrono::duration<double> most) const {
        std::unique_lock lock(mutex_);
        changed_.wait_for(lock, most, [this] { return idle(); });
    }

private:
    bool idle() const { return !working_ && !waiting_; }

    /// With the lock held. What had no answer yet can be asked again.
    void drop() {
        if (!idle()) asked_.reset();
        waiting_.reset();
        working_stop_.request_stop();
    }

    void run(const std::stop_token& stop) {
        while (true) {
            std::optional<Question> question;
            std::stop_token told;
            unsigned long forgotten = 0;
            {
                std::unique_lock lock(mutex_);
                if (!changed_.wait(lock, stop, [this] { return waiting_.has_value(); })) return;
                question = std::exchange(waiting_, std::nullopt);
                working_ = true;
                working_stop_ = {};
                told = working_stop_.get_token();
                forgotten = forgotten_;
            }
            const auto start = std::chrono::steady_clock::now();
            auto answer = work_(*question, told);
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
            {
                const std::scoped_lock lock(mutex_);
                if (answer && forgotten == forgotten_)
                    newest_ = {std::make_shared<const Answer>(std::move(*answer)), took.count(),
                               newest_.serial + 1};
                working_ = false;
            }
            changed_.notify_all();
            if (wake_) wake_();
        }
    }

    Work work_;
    std::function<void()> wake_;
    mutable std::mutex mutex_;
    mutable std::condition_variable_any changed_;
    std::optional<Question> asked_;  ///< the newest, until it is dropped
    std::optional<Question> waiting_;
    bool working_ = false;
    std::stop_source working_stop_;
    unsigned long forgotten_ = 0;  ///< counts calls of forget()
    Finished newest_;
    std::jthread thread_;  ///< last: joins before the members that it uses go
};

}  // namespace rakeline::desk
