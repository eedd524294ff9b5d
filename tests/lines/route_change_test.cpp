// Which routes of a project changed from one save to the next, where nothing else did.

#include "lines/route_change.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

/// Every key there is, in files of two kinds.
class EveryKey : public testing::Test {
 protected:
  void SetUp() override {
    fs::copy(fs::path(LINEWRIGHT_SOURCE_DIR) / "tests/input/fixtures/every-key", folder.path(),
             fs::copy_options::recursive | fs::copy_options::overwrite_existing);
  }

  std::string text_of(const std::string& name) const {
    std::ifstream file(folder.path() / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  Project loaded() const {
    LoadResult result = load_project(folder.path() / "project.yaml", built_in_catalogue());
    EXPECT_EQ(shown(result.errors), "");
    return std::move(result.project).value();
  }

  ProjectFolder folder;
};

TEST_F(EveryKey, IsNoOtherProjectWhenItIsReadAgain) {
  const Project project = loaded();
  const auto change = change_of_routes(project, loaded());
  ASSERT_TRUE(change);
  EXPECT_TRUE(change->routes.empty());
  EXPECT_TRUE(change->moved.empty());
}

// Were one place left out of those that are gone through, the two would be different projects.
TEST_F(EveryKey, IsNoOtherProjectWhereEverythingStandsTwoLinesLower) {
  const Project before = loaded();
  for (const char* name : {"project.yaml", "more.yaml"})
    folder.write(name, "# Two lines\n# more.\n" + text_of(name));
  const auto change = change_of_routes(before, loaded());
  ASSERT_TRUE(change);
  EXPECT_TRUE(change->routes.empty());
  const SourceLocation& where = before.routes.front().where;
  EXPECT_EQ(change->now_at(where), (SourceLocation{where.file, where.line + 2, where.column}));
  EXPECT_GT(change->moved.size(), 100u);
}

TEST_F(EveryKey, AnyOtherChangeIsMoreThanOneOfRoutes) {
  const Project before = loaded();
  for (const auto& change : std::vector<void (*)(Project&)>{
           [](Project& project) { project.nodes.back().at.y += 0.01; },
           [](Project& project) { project.structure.frames[0].thickness_in += 0.01; },
           [](Project& project) { project.waivers[0].reason += "."; },
           [](Project& project) { project.catalogue.lines[0].outside_diameter_in += 0.01; },
           [](Project& project) { project.closures[0].reach_in += 1; },
           [](Project& project) { project.bundles[0].ties_in += 1; },
           [](Project& project) { project.load_factor.positive += 1; }}) {
    Project now = before;
    change(now);
    EXPECT_FALSE(change_of_routes(before, now));
  }
}

/// Two routes written one after the other.
Project two_routes() {
  Project project;
  for (const char* name : {"first", "second"}) {
    Route route;
    route.name = name;
    const int line = 10 * static_cast<int>(project.routes.size() + 1);
    route.where = {"project.yaml", line, 5};
    RoutePoint point;
    point.where = {"project.yaml", line + 3, 9};
    route.points.push_back(point);
    project.routes.push_back(route);
  }
  return project;
}

TEST(RouteChange, TellsWhichRoutesAreOthers) {
  const Project before = two_routes();
  Project now = before;
  now.routes[1].points[0].at.x = 1;
  const auto change = change_of_routes(before, now);
  ASSERT_TRUE(change);
  EXPECT_EQ(change->routes, std::vector<std::size_t>{1});
  EXPECT_EQ(change->now_at(before.routes[0].where), before.routes[0].where);
}

TEST(RouteChange, KnowsWhereWhatStayedTheSameIsNow) {
  const Project before = two_routes();
  Project now = before;
  RoutePoint added = now.routes[0].points[0];
  added.where.line = 14;
  now.routes[0].points.push_back(added);
  now.routes[1].where.line += 1;
  now.routes[1].points[0].where.line += 1;
  const auto change = change_of_routes(before, now);
  ASSERT_TRUE(change);
  EXPECT_EQ(change->routes, std::vector<std::size_t>{0});
  EXPECT_EQ(change->now_at({"project.yaml", 23, 9}), (SourceLocation{"project.yaml", 24, 9}));
  EXPECT_EQ(change->now_at({"project.yaml", 13, 9}), std::nullopt) << "a place of what changed";
  EXPECT_EQ(change->now_at({"other.yaml", 23, 9}), std::nullopt);
}

TEST(RouteChange, IsNoneWhereOnePlaceBecameTwo) {
  Project before = two_routes();
  before.routes[1].where = before.routes[0].where;
  Project now = before;
  now.routes[1].where.line += 1;
  EXPECT_FALSE(change_of_routes(before, now));
}

TEST(RouteChange, IsNoneWhereRoutesComeGoOrChangeTheirNames) {
  const Project before = two_routes();
  Project fewer = before;
  fewer.routes.pop_back();
  EXPECT_FALSE(change_of_routes(before, fewer));
  EXPECT_FALSE(change_of_routes(fewer, before));
  Project renamed = before;
  renamed.routes[1].name = "third";
  EXPECT_FALSE(change_of_routes(before, renamed));
}

}  // namespace
}  // namespace linewright
