#pragma once
// A value, or what stands in its way.

#include <concepts>
#include <type_traits>
#include <utility>
#include <variant>

namespace linewright {

/// Holds a value, or the error that there is instead: made from either, true where it is the value.
/// Whoever takes the one that is not there gets std::bad_variant_access, which is a programming
/// error.
template <typename Value, typename Error>
class [[nodiscard]] Expected {
  static_assert(!std::is_same_v<Value, Error>, "an error must be told from a value by its type");
  using Either = std::variant<Value, Error>;

 public:
  template <typename Given>
  requires(std::constructible_from<Either, Given&&> &&
           !std::same_as<std::remove_cvref_t<Given>, Expected>) Expected(Given&& given)
      : either_(std::forward<Given>(given)) {}

  explicit operator bool() const { return std::holds_alternative<Value>(either_); }

  Value& operator*() & { return std::get<Value>(either_); }
  const Value& operator*() const& { return std::get<Value>(either_); }
  Value&& operator*() && { return std::get<Value>(std::move(either_)); }
  Value* operator->() { return &std::get<Value>(either_); }
  const Value* operator->() const { return &std::get<Value>(either_); }

  /// The value, or `instead` where there is an error.
  Value value_or(Value instead) const { return *this ? **this : std::move(instead); }

  const Error& error() const& { return std::get<Error>(either_); }
  Error&& error() && { return std::get<Error>(std::move(either_)); }

 private:
  Either either_;
};

}  // namespace linewright
