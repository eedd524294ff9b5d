#pragma once
// The sections of a report's page, each as HTML that is safe to stand in it.

#include <string>
#include <vector>

#include "render/report/report_page.hpp"

namespace linewright {

/// Judgements that want something done, the gravest first: their indices in the report.
std::vector<std::size_t> findings_in_order(const Report& report);
/// What a judgement is called within the page: "judgement-12".
std::string judgement_id(std::size_t index);

std::string findings_section(const ReportPage& page);
std::string margins_section(const ReportPage& page);
std::string lines_section(const ReportPage& page);
std::string schedules_section(const ReportPage& page);
/// Empty where the project has no closures.
std::string close_up_section(const ReportPage& page);
std::string cables_section(const ReportPage& page);
std::string leak_tests_section(const ReportPage& page);
/// What was taken, found on the way and passed over, and what no such report can say.
std::string cautions_section(const ReportPage& page);

/// One line unrolled along its length: how far it can move, what holds it, and the gaps judged.
std::string strip_drawing(const SceneRoute& route, const ReportPage& page);
/// Value against limit, with the side where it is broken hatched; empty where nothing was measured.
std::string margin_drawing(const Judgement& judgement);

/// What the script draws from: the scene and the findings in it, as JSON for a page.
std::string scene_json(const ReportPage& page);

}  // namespace linewright
