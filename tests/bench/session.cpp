// From a reading to the new state: a healthy walk through every tree, each answer timed by itself. The figure is the 99th of a
// hundred answers.
#include "tests/support/walker.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>

namespace core {
namespace {

void walk(const std::string &tree, std::vector<double> &seconds)
{
    Walker w(tree);
    for (int n = 0; n < 120 && !(w.atVerdict() && w.step().screen.empty()); ++n) {
        w.passSafety();
        if (w.atVerdict())
            break;
        const bool reading = !w.step().unit.empty();
        const auto from = std::chrono::steady_clock::now();
        if (!w.healthy().empty())
            break;
        benchmark::DoNotOptimize(viewOf(w.session()));
        if (reading)
            seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count());
    }
}

void readingToState(benchmark::State &state)
{
    std::vector<double> seconds;
    for (auto _ : state)
        for (const auto &[id, tree] : Shipped::get().library.trees)
            walk(id, seconds);
    std::ranges::sort(seconds);
    const auto at = [&](double share) {
        return seconds.empty() ? 0. : seconds[static_cast<std::size_t>(share * static_cast<double>(seconds.size() - 1))] * 1e3;
    };
    state.counters["p50_ms"] = at(.5);
    state.counters["p99_ms"] = at(.99);
    state.counters["max_ms"] = at(1);
    state.counters["readings"] = static_cast<double>(seconds.size());
}
BENCHMARK(readingToState)->Unit(benchmark::kSecond)->Iterations(3);

} // namespace
} // namespace core
