#pragma once
// The words that each command takes.

#include <CLI/CLI.hpp>

#include "commands/words.hpp"

namespace linewright {

void declare_project(CLI::App& app, Words& words);
void declare_set(CLI::App& app, Words& words);
void declare_compare(CLI::App& app, Words& words);
void declare_check(CLI::App& app, Words& words);
void declare_watch(CLI::App& app, Words& words);
void declare_report(CLI::App& app, Words& words);
void declare_draw(CLI::App& app, Words& words);
void declare_export(CLI::App& app, Words& words);
void declare_rig(CLI::App& app, Words& words);
void declare_cutlist(CLI::App& app, Words& words);
void declare_schedule(CLI::App& app, Words& words);
void declare_suggest(CLI::App& app, Words& words);
void declare_parts(CLI::App& app, Words& words);
void declare_walk_round(CLI::App& app, Words& words);
void declare_explain(CLI::App& app, Words& words);
void declare_catalogue(CLI::App& app, Words& words);
void declare_schema(CLI::App& app, Words& words);
void declare_init(CLI::App& app, Words& words);

}  // namespace linewright
