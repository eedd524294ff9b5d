#include "input/set_values.hpp"

#include <gtest/gtest.h>

#include "input/load_as_if.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

/// A line with two points, in a file of its own.
class SetValues : public ::testing::Test {
 protected:
  SetValues() {
    folder_.write("project.yaml",
                  "linewright: 1\nname: small\nbuild_tolerance: 0.06\ninclude: [lines.yaml]\n");
    folder_.write(
        "lines.yaml",
        "linewright: 1\n"
        "units: in\n"
        "structure:\n"
        "  frames:\n"
        "    - {name: F2.5, station: 10, thickness: 0.03, outline: [[-9, 0], [9, 0], "
        "[9, 9], [-9, 9]], holes: [{name: H1, centre: [2, 3], diameter: 1, edge: bare, "
        "mirror: H1R}]}\n"
        "nodes:\n"
        "  - {name: port, kind: static-port, at: [0, 2, 3]}\n"
        "  - {name: dial, kind: instrument, at: [20, 2, 3], ports: {s: {at: [19.5, 2, 3], "
        "direction: [-1, 0, 0]}}}\n"
        "routes:\n"
        "  - name: run\n"
        "    system: static\n"
        "    line: tube-nylon-1/4\n"
        "    from: port\n"
        "    to: dial\n"
        "    points:\n"
        "      - {at: [5, 2, 3], bend: 1.25}\n"
        "      - {through: H1}\n");
  }

  LoadedAsIf as_if(const std::vector<std::string>& set) const {
    return load_as_if(folder_.path(), small_catalogue(), set);
  }

  LoadResult load(const std::vector<std::string>& set) const { return as_if(set).loaded; }

  Project loaded(const std::vector<std::string>& set) const {
    LoadResult result = load(set);
    EXPECT_EQ(shown(result.errors), "");
    return result.project ? *std::move(result.project) : Project();
  }

  std::string refused(const std::string& value) const { return shown(load({value}).errors); }

  ProjectFolder folder_;
};

TEST_F(SetValues, AValueIsFoundByItsNamesInWhicheverFileItStands) {
  const LoadedAsIf as_if = this->as_if({"routes.run.line=tube-aluminium-1/4"});
  ASSERT_TRUE(as_if.loaded.project) << shown(as_if.loaded.errors);
  EXPECT_EQ(as_if.loaded.project->routes.at(0).line, "tube-aluminium-1/4");
  ASSERT_EQ(as_if.set.size(), 1u);
  EXPECT_EQ(as_if.set[0].path, "routes.run.line");
  EXPECT_EQ(as_if.set[0].value, "tube-aluminium-1/4");
  EXPECT_EQ(as_if.set[0].was, "tube-nylon-1/4");
  EXPECT_EQ(as_if.set[0].where, (SourceLocation{"lines.yaml", 12, 11}));
}

TEST_F(SetValues, AnItemWithoutANameIsFoundByItsNumberFromOne) {
  EXPECT_EQ(loaded({"routes.run.points.1.bend=2"}).routes.at(0).points.at(0).bend_in, 2);
  EXPECT_EQ(loaded({"routes.run.points.1.at.3=4.5"}).routes.at(0).points.at(0).at,
            (Vec3{5, 2, 4.5}));
  EXPECT_EQ(loaded({"routes.1.line=hose-rubber-1/4"}).routes.at(0).line, "hose-rubber-1/4");
}

TEST_F(SetValues, AMapIsFoundByTheNameItStandsUnder) {
  const Project project = loaded({"nodes.dial.ports.s.insertion=0.5"});
  EXPECT_EQ(project.nodes.at(1).ports.at(0).insertion_in, 0.5);
  EXPECT_EQ(loaded({"nodes.dial.ports.s.at.1=19"}).nodes.at(1).ports.at(0).at, (Vec3{19, 2, 3}));
  EXPECT_EQ(refused("nodes.dial.ports.x.insertion=0.5"),
            "--set:1:18: there is no 'x' in 'nodes.dial.ports'\n");
}

TEST_F(SetValues, AListOfNumbersIsSetAsAWhole) {
  EXPECT_EQ(loaded({"nodes.dial.at=[20, 2, 5]"}).nodes.at(1).at, (Vec3{20, 2, 5}));
}

TEST_F(SetValues, AQuantityMayCarryItsUnit) {
  EXPECT_DOUBLE_EQ(*loaded({"routes.run.points.1.bend=25.4 mm"}).routes.at(0).points.at(0).bend_in,
                   1.0);
}

TEST_F(SetValues, AKeyThatMayStandThereIsAdded) {
  const Project project = loaded({"climb=1000 ft/min", "nodes.dial.volume=6 in3"});
  EXPECT_TRUE(project.climb_ft_per_min.has_value());
  EXPECT_EQ(project.nodes.at(1).volume_in3, 6);
}

TEST_F(SetValues, WhatFollowsFromAValueFollowsFromTheNewOne) {
  const Project project =
      loaded({"structure.frames.F2.5.station=12", "structure.frames.F2.5.holes.H1.centre.1=3"});
  EXPECT_EQ(project.routes.at(0).points.at(1).at, (Vec3{12, 3, 3}));
  // The mirror image of the hole stands on the other side of BL 0.
  ASSERT_EQ(project.structure.frames.at(0).holes.size(), 2u);
}

TEST_F(SetValues, TheFilesStayAsTheyAre) {
  loaded({"routes.run.line=hose-rubber-1/4"});
  EXPECT_EQ(loaded({}).routes.at(0).line, "tube-nylon-1/4");
}

TEST_F(SetValues, WhatIsNotThereIsNamedWithTheNearestName) {
  EXPECT_EQ(refused("routs.run.line=x"),
            "--set:1:1: a project has no key 'routs' | did you mean 'routes'?\n");
  EXPECT_EQ(refused("routes.rum.line=x"),
            "--set:1:8: 'routes' has no 'rum' | did you mean 'run'?\n");
  EXPECT_EQ(refused("routes.rudder.line=x"),
            "--set:1:8: 'routes' has no 'rudder' | there are: run\n");
  EXPECT_EQ(refused("routes.run.lime=x"),
            "--set:1:12: 'routes.run' has no key 'lime' | did you mean 'line'?\n");
}

TEST_F(SetValues, ANumberBeyondTheListIsRefused) {
  const std::string tail = "' has 2 in it, counted from 1: there is no ";
  EXPECT_EQ(refused("routes.run.points.3.bend=1"), "--set:1:19: 'routes.run.points" + tail + "3\n");
  EXPECT_EQ(refused("routes.run.points.0.bend=1"), "--set:1:19: 'routes.run.points" + tail + "0\n");
}

TEST_F(SetValues, AMirrorImageIsSetWhereItsOriginalStands) {
  EXPECT_EQ(refused("structure.frames.F2.5.holes.H1R.diameter=2"),
            "--set:1:29: 'H1R' is the mirror image of 'H1' | set it there: 'H1R' follows\n");
}

TEST_F(SetValues, AValueThatDoesNotFitIsAnErrorAtItsPlaceInTheOption) {
  const LoadResult result = load({"climb=1000 ft/min", "routes.run.points.1.bend=soft"});
  ASSERT_EQ(result.errors.size(), 1u);
  EXPECT_EQ(result.errors[0].where, (SourceLocation{"--set", 2, 26}));
  EXPECT_EQ(result.errors[0].source_line, "routes.run.points.1.bend=soft");
}

TEST_F(SetValues, AWrongNameInAValueIsFoundAsInAFile) {
  EXPECT_TRUE(refused("routes.run.line=tube-nilon-1/4")
                  .starts_with("--set:1:17: there is no line 'tube-nilon-1/4' | did you mean "
                               "'tube-nylon-1/4'?"));
}

TEST_F(SetValues, WhatIsNoValueIsRefused) {
  EXPECT_EQ(refused("routes.run.line"),
            "--set:1:1: expected PATH=VALUE, as in routes.static-left.line=tube-aluminium-1/4\n");
  EXPECT_EQ(refused("routes.run.line="), "--set:1:17: no value is given for 'routes.run.line'\n");
  EXPECT_EQ(refused("routes.run.line={a: 1}"),
            "--set:1:17: a map cannot be set as a whole: name the key in it\n");
  EXPECT_EQ(
      refused("routes.run.points=5"),
      "--set:1:1: 'routes.run.points' is a list: name one of it, or its number from 1 to 2\n");
  EXPECT_TRUE(
      refused("routes.run=5")
          .starts_with("--set:1:1: 'routes.run' is a map: name the key in it | keys of a route: "));
  EXPECT_EQ(refused("routes.run.line.size=5"),
            "--set:1:17: 'routes.run.line' is no map and no list: nothing is in it\n");
}

TEST_F(SetValues, ThePathOfAValueThatIsSetTwiceIsRefused) {
  EXPECT_EQ(shown(load({"climb=900 ft/min", "climb=1000 ft/min"}).errors),
            "--set:2:1: 'climb' is set twice | leave one of them out\n");
}

TEST_F(SetValues, WhatEachFileSaysOfItselfCannotBeSetForAll) {
  EXPECT_EQ(refused("linewright=1"),
            "--set:1:1: 'linewright' stands in 2 files, each for itself\n");
  EXPECT_EQ(refused("include.1=other.yaml"),
            "--set:1:1: which files a project includes cannot be set | keep a second project file "
            "for it, and compare the two\n");
}

TEST_F(SetValues, WhereAFileCannotBeReadNothingElseIsBlamed) {
  folder_.write("lines.yaml", "linewright: 1\nroutes: [\n");
  EXPECT_EQ(refused("routes.run.line=x").find("--set"), std::string::npos);
}

}  // namespace
}  // namespace linewright
