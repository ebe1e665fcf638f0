// All trees loaded, beside a bare event pass of yaml-cpp over the same bytes in the same run.
#include "core/load/load.h"

#include <benchmark/benchmark.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <chrono>
#include <fstream>
#include <sstream>

namespace {

struct Nothing : YAML::EventHandler
{
    void OnDocumentStart(const YAML::Mark &) override {}
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark &, YAML::anchor_t) override {}
    void OnAlias(const YAML::Mark &, YAML::anchor_t) override {}
    void OnScalar(const YAML::Mark &, const std::string &, YAML::anchor_t, const std::string &) override {}
    void OnSequenceStart(const YAML::Mark &, const std::string &, YAML::anchor_t, YAML::EmitterStyle::value) override {}
    void OnSequenceEnd() override {}
    void OnMapStart(const YAML::Mark &, const std::string &, YAML::anchor_t, YAML::EmitterStyle::value) override {}
    void OnMapEnd() override {}
};

void barePass()
{
    for (const auto &entry : std::filesystem::recursive_directory_iterator(TREES)) {
        if (entry.path().extension() != ".yaml")
            continue;
        std::ifstream in(entry.path(), std::ios::binary);
        YAML::Parser parser(in);
        Nothing nothing;
        while (parser.HandleNextDocument(nothing)) {
        }
    }
}

template<class F>
double secondsOf(F &&f)
{
    const auto from = std::chrono::steady_clock::now();
    f();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
}

void loadAllTrees(benchmark::State &state)
{
    const std::filesystem::path folder = TREES;
    double bare = 0, ours = 0;
    for (auto _ : state) {
        bare += secondsOf(barePass);
        ours += secondsOf([&] { benchmark::DoNotOptimize(core::loadFolders({&folder, 1})); });
    }
    const auto n = static_cast<double>(state.iterations());
    state.counters["bare_ms"] = bare / n * 1e3;
    state.counters["ours_ms"] = ours / n * 1e3;
    state.counters["ratio"] = ours / bare;
}
BENCHMARK(loadAllTrees)->Unit(benchmark::kMillisecond)->MinTime(2);

} // namespace
