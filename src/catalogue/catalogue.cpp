#include "catalogue/catalogue.hpp"

#include "catalogue/embedded_tables.hpp"
#include "catalogue/read_tables.hpp"

namespace linewright {

const Catalogue& built_in_catalogue() {
  static const Catalogue catalogue = read_tables(embedded_tables());
  return catalogue;
}

}  // namespace linewright
