#include "web/files.hpp"

#include "criteria/shipped.hpp"
#include "measure/sha256.hpp"
#include "render/svg.hpp"

#include <map>
#include <stdexcept>

namespace beadbook {

Answer file_answer(const Request &request) {
    static const std::map<std::string, std::string> types{{".css", "text/css; charset=utf-8"},
                                                          {".js", "text/javascript; charset=utf-8"},
                                                          {".svg", "image/svg+xml"}};
    const std::string name = request.path.substr(1);
    const auto type = types.find(name.substr(std::min(name.rfind('.'), name.size())));
    const Answer none{404, "text/plain; charset=utf-8", "no such file\n"};
    if (type == types.end()) return none;
    try {
        const std::string text =
            name == "files/picture.css" ? std::string(picture_style()) : shipped_file(name);
        const std::string tag = "\"" + sha256(text).substr(0, 32) + "\"";
        Answer out{200, type->second, text, {{"ETag", tag}, {"Cache-Control", "no-cache"}}};
        // The worker keeps pages, not only files.
        if (name == "files/worker.js") out.headers.emplace_back("Service-Worker-Allowed", "/");
        if (request.have == tag) out.status = 304, out.body.clear();
        return out;
    } catch (const std::out_of_range &) {
        return none;
    }
}

} // namespace beadbook
