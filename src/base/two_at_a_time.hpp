// Many pieces of work that do not depend on each other, on two threads.
#pragma once

#include <atomic>
#include <cstddef>
#include <thread>

namespace beamfork {

/// Calls `work(i)` for each i below `count`, each once, two at a time and nearly in order; returns when all are done.
/// `work` must not throw.
template <class Work>
void two_at_a_time(std::size_t count, const Work& work) {
    std::atomic<std::size_t> next = 0;
    const auto take = [&] {
        for (std::size_t i = next++; i < count; i = next++)
            work(i);
    };
    if (count < 2) return take();
    const std::jthread beside(take);
    take();
}

}  // namespace beamfork
