#pragma once
// JSON held against a JSON Schema by an independent validator.

#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

namespace linewright::test {

class JsonSchema {
 public:
  explicit JsonSchema(nlohmann::json text) : text_(std::move(text)) {
    valijson::SchemaParser(valijson::SchemaParser::kDraft7)
        .populateSchema(valijson::adapters::NlohmannJsonAdapter(text_), schema_);
  }

  /// What is wrong with a value, each fault with its place; empty where nothing is.
  std::string faults(const nlohmann::json& value) const {
    valijson::ValidationResults results;
    valijson::Validator validator;
    if (validator.validate(schema_, valijson::adapters::NlohmannJsonAdapter(value), &results))
      return {};
    std::string told = "invalid";
    valijson::ValidationResults::Error error;
    while (results.popError(error)) {
      told += "\n";
      for (const std::string& step : error.context) told += step;
      told += " " + error.description;
    }
    return told;
  }

 private:
  nlohmann::json text_;
  valijson::Schema schema_;
};

}  // namespace linewright::test
