#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "commands/watched_program.hpp"
#include "render/report/html_text.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::contains;
using test::run;
using test::StarterCopy;

/// What stands in a page from one text to the next that follows it.
std::string between_texts(const std::string& page, const std::string& from, const std::string& to) {
  const std::size_t start = page.find(from);
  if (start == std::string::npos) return {};
  const std::size_t end = page.find(to, start + from.size());
  if (end == std::string::npos) return {};
  return page.substr(start + from.size(), end - start - from.size());
}

json scene_of_page(const std::string& page) {
  return json::parse(
      between_texts(page, "<script type=\"application/json\" id=\"scene\">", "</script>"));
}

/// How often `part` stands in `text`.
int count_of(const std::string& text, const std::string& part) {
  int count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++count;
  return count;
}

TEST(HtmlText, WritesWhatCouldBeMarkupAsEntities) {
  EXPECT_EQ(escaped("<b a=\"1\" c='2'>&"), "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;");
}

TEST(HtmlText, WritesMarksOfReadingDirectionOut) {
  EXPECT_EQ(escaped_lines("a\u200Fb\u202Ec"), "a[U+200F]b[U+202E]c");
}

TEST(HtmlText, ReplacesBytesThatAreNotUtf8) {
  EXPECT_EQ(escaped_lines("a\xFF\xC3z"), "a\uFFFD\uFFFDz");
}

TEST(HtmlText, LeavesLettersOfOtherScripts) {
  EXPECT_EQ(escaped("h\u00F6he \u05D0 \u4E2D"), "h\u00F6he \u05D0 \u4E2D");
}

TEST(ReportCommand, ShowsEveryFindingWithItsMend) {
  const StarterCopy project;
  project.bend_too_tightly();
  const auto report = run({"report", project.root()});
  EXPECT_EQ(report.code, 1);
  const json checks = json::parse(run({"check", project.root(), "--format", "json"}).out)["checks"];
  int findings = 0;
  for (const json& check : checks) {
    EXPECT_TRUE(contains(report.out, escaped(check["message"].get<std::string>()))) << check;
    if (check["verdict"] == "pass") continue;
    ++findings;
    EXPECT_TRUE(contains(report.out, escaped(check["mend"].get<std::string>()))) << check;
  }
  EXPECT_GT(findings, 0);
  EXPECT_EQ(count_of(report.out, "<article class=\"finding "), findings);
  EXPECT_EQ(scene_of_page(report.out)["findings"].size(), static_cast<std::size_t>(findings));
}

TEST(ReportCommand, HasThePlaceOfAFindingInItsScene) {
  const StarterCopy project;
  project.bend_too_tightly();
  const json scene = scene_of_page(run({"report", project.root()}).out);
  const json checks = json::parse(run({"check", project.root(), "--format", "json"}).out)["checks"];
  for (const json& check : checks) {
    if (check["verdict"] != "fail") continue;
    const json& at = scene["findings"][0]["at"];
    EXPECT_NEAR(at[0].get<double>(), check["at"]["fs"].get<double>(), 0.0006);  // rounded to 0.001
    EXPECT_NEAR(at[2].get<double>(), check["at"]["wl"].get<double>(), 0.0006);
    return;
  }
  FAIL() << "no fail";
}

TEST(ReportCommand, HasTheWaterThatStaysInEachAttitude) {
  const json scene = scene_of_page(
      run({"report", LINEWRIGHT_SOURCE_DIR "/examples/rules/drainage/fails.yaml"}).out);
  EXPECT_EQ(scene["attitudes"], json::array({"level flight"}));
  ASSERT_EQ(scene["pools"].size(), 1u);
  const json& pool = scene["pools"][0];
  EXPECT_EQ(pool["attitude"], "level flight");
  EXPECT_EQ(pool["route"], "static-line");
  // It lies about the lowest point, which is drawn 1 in under the port.
  const json& at = scene["routes"][0]["at"];
  double lowest = 1e9;
  double lowest_along = 0;
  for (std::size_t i = 0; i < scene["routes"][0]["along"].size(); ++i)
    if (at[3 * i + 2].get<double>() < lowest) {
      lowest = at[3 * i + 2];
      lowest_along = scene["routes"][0]["along"][i];
    }
  EXPECT_LT(pool["from"].get<double>(), lowest_along);
  EXPECT_GT(pool["to"].get<double>(), lowest_along);
}

TEST(ReportCommand, HasTheCloseUpWhereThereAreClosures) {
  const std::string demo = run({"report", LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml"}).out;
  const std::string list =
      run({"close-up", LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml", "--quiet"}).out;
  ASSERT_FALSE(list.empty());
  EXPECT_TRUE(contains(demo, escaped_lines(list)));
  EXPECT_TRUE(contains(demo, "<a href=\"#close-up\">"));
  const std::string without =
      run({"report", LINEWRIGHT_SOURCE_DIR "/examples/rules/drainage/fails.yaml"}).out;
  EXPECT_FALSE(contains(without, "close-up"));
}

TEST(ReportCommand, DrawsEveryLineWithItsReachFromEndToEnd) {
  const StarterCopy project;
  const json scene = scene_of_page(run({"report", project.root()}).out);
  const json routes =
      json::parse(run({"cutlist", project.root(), "--format", "json"}).out)["routes"];
  ASSERT_EQ(scene["routes"].size(), routes.size());
  for (std::size_t i = 0; i < routes.size(); ++i) {
    const json& drawn = scene["routes"][i];
    EXPECT_EQ(drawn["along"].front(), 0.0);
    EXPECT_NEAR(drawn["along"].back().get<double>(), routes[i]["length_in"].get<double>(), 0.0006);
    EXPECT_EQ(drawn["at"].size(), 3 * drawn["along"].size());
    for (std::size_t j = 0; j < drawn["along"].size(); ++j) {
      if (drawn["likely"][j].is_null()) continue;
      EXPECT_LE(drawn["likely"][j].get<double>(), drawn["bound"][j].get<double>() + 0.001);
    }
  }
}

TEST(ReportCommand, AllowsNoScriptButItsOwnAndNoRequest) {
  const StarterCopy project;
  const std::string page = run({"report", project.root()}).out;
  const std::string policy = between_texts(page, "Content-Security-Policy\" content=\"", "\"");
  EXPECT_TRUE(contains(policy, "default-src 'none'; script-src 'sha256-")) << policy;
  EXPECT_FALSE(contains(policy, "unsafe")) << policy;
  // Such attributes the policy would not let take effect.
  EXPECT_FALSE(contains(page.substr(0, page.find("<script>")), " style=\""));
  EXPECT_FALSE(contains(page.substr(0, page.find("<script>")), "http://"));
  EXPECT_FALSE(contains(page.substr(0, page.find("<script>")), "https://"));
}

TEST(ReportCommand, TakesNoNameForMarkup) {
  const StarterCopy project;
  const std::string name = "</script><script>alert(1)</script>";
  const std::string text = test::read(project.file("project.yaml"));
  const std::size_t line = text.find("name: ");
  test::write(project.file("project.yaml"),
              text.substr(0, line) + "name: \"" + name + "\"" + text.substr(text.find('\n', line)));
  const std::string page = run({"report", project.root()}).out;
  EXPECT_FALSE(contains(page, name));
  EXPECT_TRUE(contains(page, "<h1>" + escaped(name) + "</h1>"));
  EXPECT_EQ(count_of(page, "<script"), 2);
}

TEST(ReportCommand, SaysWhatWasTriedInPlaceOfTheFiles) {
  const StarterCopy project;
  const std::string page =
      run({"report", project.root(), "--set", "routes.static-altimeter.points.1.bend=0.5"}).out;
  EXPECT_TRUE(contains(page, "Judged as if the files said:"));
  EXPECT_TRUE(contains(page, "<code>routes.static-altimeter.points.1.bend: 0.5</code>"));
  EXPECT_FALSE(contains(run({"report", project.root()}).out, "Judged as if"));
}

TEST(ReportCommand, SaysLengthsInMillimetresWhereAskedFor) {
  const StarterCopy project;
  const std::string page = run({"report", project.root(), "--units", "mm"}).out;
  EXPECT_TRUE(contains(page, "mm along the line; gaps and reach in mm upwards"));
  EXPECT_EQ(scene_of_page(page)["unit"], "mm");
}

TEST(ReportCommand, ReplacesNoFileUnasked) {
  const StarterCopy project;
  test::write(project.file("page.html"), "mine");
  EXPECT_EQ(run({"report", project.root(), "--output", project.file("page.html")}).code, 2);
  EXPECT_EQ(test::read(project.file("page.html")), "mine");
  EXPECT_EQ(run({"report", project.root(), "--output", project.file("page.html"), "--force"}).code,
            0);
  EXPECT_TRUE(test::read(project.file("page.html")).starts_with("<!DOCTYPE html>"));
}

TEST(ReportCommand, RefusesAnotherForm) {
  const StarterCopy project;
  const auto report = run({"report", project.root(), "--format", "text"});
  EXPECT_EQ(report.code, 2);
  EXPECT_TRUE(contains(report.err, "--format takes html, not 'text'")) << report.err;
}

TEST(WatchedReport, IsWrittenAgainOnEachSave) {
  const StarterCopy project;
  const std::string file = project.root() + "-page.html";
  test::WatchedProgram program({project.root(), "--report", file, "--rule", "bend-radius"});
  ASSERT_TRUE(program.says("Ctrl-C ends")) << program.said();
  const std::string first = test::read(file);
  EXPECT_TRUE(contains(first, "data-watched=\"yes\""));
  EXPECT_FALSE(contains(first, "<article class=\"finding fail"));
  // All rules are in it, though the terminal shows one.
  EXPECT_TRUE(contains(first, "<td>support-spacing</td>"));

  project.bend_too_tightly();
  ASSERT_TRUE(program.says("fail: bend-radius: ")) << program.said();
  test::write(project.file("static.yaml"), test::read(project.file("static.yaml")) + "rout: []\n");
  ASSERT_TRUE(program.says("nothing was judged")) << program.said();
  // What the next check says comes after the page of the one before was written.
  test::write(project.file("project.yaml"), test::read(project.file("project.yaml")) + "\n");
  ASSERT_TRUE(program.says("nothing was judged")) << program.said();
  EXPECT_TRUE(contains(test::read(file), "<h1>Nothing was judged</h1>"));
  EXPECT_TRUE(contains(test::read(file), "rout"));
}

TEST(WatchedReport, NeedsAFolderToGoTo) {
  const StarterCopy project;
  const std::string folder = project.root() + "-pages";
  const test::CommandRun result = run({"watch", project.root(), "--report", folder + "/page.html"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_EQ(result.err, "linewright: error: cannot write '" + folder +
                            "/page.html': there is no folder '" + folder + "'\n");
}

TEST(WatchedReport, ReplacesNoFileUnasked) {
  const StarterCopy project;
  const std::string file = project.root() + "-page.html";
  test::write(file, "mine");
  test::WatchedProgram program({project.root(), "--report", file});
  EXPECT_TRUE(program.says("is already there and is not overwritten; --force replaces it"))
      << program.said();
  ASSERT_TRUE(program.says("Ctrl-C ends")) << program.said();
  EXPECT_EQ(test::read(file), "mine");
}

}  // namespace
}  // namespace linewright
