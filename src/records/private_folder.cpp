#include "records/private_folder.hpp"

#include "measure/refusal.hpp"

#include <stdlib.h>

namespace beadbook {

PrivateFolder::PrivateFolder(const std::string &purpose) {
    std::string name = (std::filesystem::temp_directory_path() / "beadbook-XXXXXX").string();
    if (!mkdtemp(name.data())) throw StoreError(name + ": no folder for " + purpose + " can be made there");
    path_ = name;
}

PrivateFolder::~PrivateFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

} // namespace beadbook
