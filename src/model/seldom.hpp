#pragma once
// A member that few of many values have.

#include <memory>
#include <utility>

namespace linewright {

/// Like std::optional, with no more room than a pointer's where nothing is held. A copy copies what
/// is held.
template <typename T>
class Seldom {
 public:
  Seldom() = default;
  Seldom(T value) : held_(std::make_unique<T>(std::move(value))) {}
  Seldom(const Seldom& other) : held_(other ? std::make_unique<T>(*other) : nullptr) {}
  Seldom(Seldom&&) noexcept = default;
  Seldom& operator=(Seldom other) noexcept {
    held_ = std::move(other.held_);
    return *this;
  }
  ~Seldom() = default;

  explicit operator bool() const { return held_ != nullptr; }
  const T& operator*() const { return *held_; }
  const T* operator->() const { return held_.get(); }

  friend bool operator==(const Seldom& a, const Seldom& b) {
    return a && b ? *a == *b : a.held_ == b.held_;
  }

 private:
  std::unique_ptr<T> held_;
};

}  // namespace linewright
