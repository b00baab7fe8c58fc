#pragma once

#include "web/message.hpp"

namespace beadbook {

/// A file of src/web/files under /files/, built into the program, with its hash as ETag.
Answer file_answer(const Request &request);

} // namespace beadbook
