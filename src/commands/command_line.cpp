#include "commands/command_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string_view>

#include "commands/command_list.hpp"
#include "commands/known_name.hpp"
#include "commands/leak_test_line.hpp"
#include "commands/still_working.hpp"
#include "render/layout.hpp"
#include "system/path_text.hpp"
#include "system/terminal.hpp"
#include "system/true_path.hpp"
#include "system/whole_file.hpp"

namespace linewright {

namespace {

namespace fs = std::filesystem;

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    for (const std::string& name : option->get_snames()) names.push_back("-" + name);
  }
  return names;
}

/// An option with one value that is there more than once; empty for none.
std::string given_twice(const std::vector<std::string>& arguments, const CLI::App& command) {
  const auto is_given = [](const std::string& argument, const std::string& name) {
    return argument == name || argument.starts_with(name + "=");
  };
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_multi_option_policy() != CLI::MultiOptionPolicy::Throw) continue;
    if (option->get_expected_max() != 1) continue;
    for (const std::string& written : option->get_lnames()) {
      const std::string name = "--" + written;
      const auto count = std::count_if(arguments.begin(), arguments.end(),
                                       [&](const auto& each) { return is_given(each, name); });
      if (count > 1)
        return fmt::format("{} is given {}, and takes one value: run linewright {} once for each",
                           name, count == 2 ? "twice" : fmt::format("{} times", count),
                           command.get_name());
    }
  }
  return {};
}

/// Checks the words that CLI11 explains badly: the command and all options.
std::string misspelling(const std::vector<std::string>& arguments, const CLI::App& app) {
  if (arguments.empty()) return "no command is given (linewright --help lists them)";
  const auto is_option = [](const std::string& word) { return word.size() > 1 && word[0] == '-'; };
  const auto command = std::find_if_not(arguments.begin(), arguments.end(), is_option);
  const std::string before = unknown_option({arguments.begin(), command}, option_names(app));
  if (!before.empty()) return before + "; options of a command come after it";
  if (command == arguments.end()) return {};
  std::vector<std::string> names;
  for (const Command& known : all_commands()) names.emplace_back(known.name);
  const std::string wrong = unknown_name("command", *command, names);
  if (!wrong.empty()) return wrong + " (linewright --help lists them)";
  const std::vector<std::string> rest(command + 1, arguments.end());
  const CLI::App& chosen = *app.get_subcommand(*command);
  const std::string option = unknown_option(rest, option_names(chosen));
  if (!option.empty()) return option;
  const std::string twice = given_twice(rest, chosen);
  if (!twice.empty() || *command != "leak-test") return twice;
  return missing_action(rest);
}

/// Help and version are results; any other end of parsing is wrong usage.
Outcome after_parsing(const CLI::ParseError& end, const CLI::App& app) {
  std::ostringstream shown;
  std::ostringstream unused;
  if (end.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
    app.exit(end, shown, unused);
    return {ExitCode::nothing_failed, shown.str(), ""};
  }
  Outcome outcome = refusal(one_line(end.what()));
  const std::vector<CLI::App*> chosen = app.get_subcommands();
  const std::string command = chosen.empty() ? "" : " " + chosen.front()->get_name();
  outcome.errors += "linewright" + command + " --help shows how it is used\n";
  return outcome;
}

ColourSurroundings colour_surroundings(bool terminal) {
  const auto value = [](const char* name) {
    const char* text = std::getenv(name);
    return std::string_view(text ? text : "");
  };
  return {terminal, !value("NO_COLOR").empty() || value("TERM") == "dumb"};
}

Outcome run_chosen(const CLI::App& app, const Words& words, bool terminal, const Show& show) {
  const std::string name = app.get_subcommands().front()->get_name();
  for (const Command& command : all_commands()) {
    if (command.name != name) continue;
    if (command.formats.empty()) return command.run(words, {});
    const auto form =
        read_form(words, command.formats, colour_surroundings(terminal && !words.output));
    if (!form) return refusal(form.error());
    if (command.keep_running) return command.keep_running(words, *form, show);
    return command.run(words, *form);
  }
  throw std::logic_error("a declared command has no entry");
}

/// Puts the result where it belongs. Returns what went wrong, empty for nothing.
std::string put(const std::string& result, const Words& words, std::ostream& out) {
  if (words.output) return write_output_file({path_of(*words.output), result}, words.force);
  errno = 0;
  out << result << std::flush;
  // A reader such as `head` that has seen enough is no fault of the result.
  if (out || errno == EPIPE) return {};
  return "the result could not be written to standard output";
}

/// Puts the result and the file that belongs to it, or neither.
std::string put_both(const std::string& result, const NewFile& beside, const Words& words,
                     std::ostream& out) {
  std::error_code ignored;
  if (words.output && true_path(path_of(*words.output), ignored) == true_path(beside.path, ignored))
    return fmt::format("'{}' cannot be both the result and the record",
                       one_line(text_of(beside.path)));
  std::string wrong = write_whole_file(beside, false);
  if (!wrong.empty()) return wrong;
  wrong = put(result, words, out);
  if (!wrong.empty()) fs::remove(beside.path, ignored);
  return wrong;
}

/// A result that cannot be written is an error of its own.
ExitCode deliver(const Outcome& outcome, const Words& words, std::ostream& out, std::ostream& err) {
  err << outcome.errors;
  if (outcome.result.empty()) return outcome.code;
  const std::string wrong = outcome.beside ? put_both(outcome.result, *outcome.beside, words, out)
                                           : put(outcome.result, words, out);
  if (!wrong.empty()) {
    err << refusal(one_line(wrong)).errors;
    return ExitCode::bad_input;
  }
  if (words.quiet) return outcome.code;
  if (outcome.beside)
    err << "linewright: wrote " << one_line(text_of(outcome.beside->path)) << "\n";
  if (words.output)
    err << "linewright: wrote " << one_line(text_of(path_of(*words.output))) << "\n";
  return outcome.code;
}

/// Bytes that a terminal would take for orders are refused there; a pipe and a file get them.
Outcome fit_to_be_shown(Outcome outcome, bool on_terminal) {
  if (!outcome.binary || !on_terminal) return outcome;
  return refusal("the result is binary, which a terminal cannot show: write it with --output FILE");
}

ExitCode run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
  CLI::App app("Checks how the lines and control cables of a light aeroplane are run.");
  Words words;
  declare_all(app, words);
  const std::string wrong = misspelling(arguments, app);
  if (!wrong.empty()) return deliver(refusal(wrong), {}, out, err);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& end) {
    return deliver(after_parsing(end, app), {}, out, err);
  }
  const bool terminal = &out == &std::cout && output_is_terminal();
  ExitCode shown = ExitCode::nothing_failed;
  const Show show = [&](const Outcome& outcome) {
    shown = deliver(outcome, words, out, err);
    return out.good();
  };
  const bool watched = app.got_subcommand("watch");
  const bool listened_to = &err == &std::cerr && errors_are_terminal();
  std::optional<StillWorking> working;
  if (listened_to && !watched && !words.quiet)
    working.emplace([&err](std::string_view said) { err << said << std::flush; },
                    std::chrono::seconds(2), std::chrono::seconds(1));
  const Outcome last =
      fit_to_be_shown(run_chosen(app, words, terminal, show), terminal && !words.output);
  working.reset();
  return out.good() ? deliver(last, words, out, err) : shown;
}

constexpr std::string_view own_fault =
    "\nThis is a mistake in the program, not in your files. Nothing was judged.\n";

}  // namespace

int run_command_line(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
  try {
    const std::vector<std::string> arguments(argv + std::min(argc, 1), argv + argc);
    return static_cast<int>(run(arguments, out, err));
  } catch (const std::exception& error) {
    err << "linewright: internal error: " << error.what() << own_fault;
  } catch (...) {
    err << "linewright: internal error" << own_fault;
  }
  return static_cast<int>(ExitCode::internal_error);
}

}  // namespace linewright
