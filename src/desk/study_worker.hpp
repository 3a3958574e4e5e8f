// SPDX-License-Identifier: MIT
#pragma once

#include "desk/history.hpp"
#include "drawing/room_mesh.hpp"
#include "study/study.hpp"

#include <chrono>
#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

/// Studies the newest brief in the background, and makes the room's triangles ready for its view. A
/// brief that is overtaken before its turn is never studied; the newest finished study is what
/// everything draws. Once a study is finished and no brief waits, its crowd is drawn; a new brief
/// stops that at once, and what was drawn is dropped. A study never shows another's crowd, but one
/// that reads the same of the layout keeps its own.
namespace rakeline::desk {

/// For which choice triangles are made.
struct RoomLook {
    int projector = 0;
    int format = 0;
    bool operator==(const RoomLook&) const = default;
};

struct FinishedStudy {
    std::shared_ptr<const study::Study> study;  ///< its `crowd` null until that is drawn
    std::shared_ptr<const drawing::RoomMesh>
        mesh;  ///< of the study for `look`; null: not asked for
    RoomLook look;
    double took_s = 0.0;       ///< the study, its triangles and crowd left out
    unsigned long serial = 0;  ///< counts from 1, the crowd's coming too
};

class StudyWorker {
public:
    /// `wake` is called from the worker's thread after each finished study, and while and after its
    /// crowd is drawn.
    explicit StudyWorker(std::function<void()> wake = {});
    ~StudyWorker();
    StudyWorker(const StudyWorker&) = delete;
    StudyWorker& operator=(const StudyWorker&) = delete;

    /// `look`: triangles are wanted too.
    void post(BriefPtr brief, std::optional<RoomLook> look = {});
    /// Drops what is known and what is under way: another document is open now.
    void forget();
    FinishedStudy newest() const;  ///< study null before the first
    bool busy() const;             ///< a brief waits or is being studied
    /// How far the crowd of the newest study is; nothing while none is being drawn.
    std::optional<sight::CrowdProgress> sampling() const;
    void wait_until_idle() const;
    /// The same, but no longer than this.
    void wait_until_idle(std::chrono::duration<double> most) const;
    /// Until the newest brief's crowd is there too, for no longer than `most`; whether it is.
    bool wait_until_sampled(std::chrono::milliseconds most) const;

private:
    /// What is under way: a brief's study, then its crowd.
    struct Job {
        BriefPtr brief;
        std::optional<RoomLook> look;
        unsigned long document = 0;
    };

    void work(const std::stop_token& stop);
    std::optional<Job> next_job(const std::stop_token& stop);
    std::shared_ptr<const study::Study> study_job(const Job& job, const std::stop_token& stop);
    void sample(const Job& job, const study::Study& study, const std::stop_token& stop);
    void publish(const Job& job, FinishedStudy finished);
    void stop_sampling();
    void wake() const;

    std::function<void()> wake_;
    study::StudyCache cache_;  ///< the worker's thread alone
    mutable std::mutex mutex_;
    mutable std::condition_variable_any changed_;
    BriefPtr waiting_;
    std::optional<RoomLook> look_;  ///< of the brief that waits
    bool studying_ = false;
    std::optional<sight::CrowdProgress> sampling_;
    std::stop_source sampling_stop_;
    unsigned long document_ = 0;  ///< counts calls of forget()
    FinishedStudy newest_;
    std::jthread thread_;  ///< last: joins before the members that it uses go
};

}  // namespace rakeline::desk
