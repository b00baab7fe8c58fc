#include "report/label_document.hpp"

#include "report/qr_code.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr double label_width_units = 232, label_height_units = 120; // of about a quarter of a millimetre

/// What tells coupons apart at the bench, as far as it is known.
std::vector<std::string> label_lines(const CouponRecord &coupon) {
    std::vector<std::string> out;
    const auto put = [&](std::initializer_list<const char *> fields) {
        std::string line;
        for (const char *field : fields)
            if (const std::string value = coupon.get(field); !value.empty())
                line += (line.empty() ? "" : ", ") + value;
        if (!line.empty()) out.push_back(std::move(line));
    };
    put({"welder", "cohort"});
    put({"process", "position"});
    put({"joint", "form"});
    put({"welded"});
    return out;
}

/// Smaller until it fits, then cut.
PictureText fitted(double x, double y, double size, double least, double room, std::string text) {
    while (size > least && text_width(text, size) > room) size -= 0.5;
    while (text.size() > 1 && text_width(text, size) > room) {
        do text.pop_back();
        while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80);
    }
    return {x, y, size, std::move(text)};
}

Figure label_of_coupon(const CouponLabels &labels, const CouponRecord &coupon) {
    Figure out;
    const std::string code = code_text(labels, coupon);
    Picture &p = out.picture;
    p.kind = "label";
    p.title = "Label of coupon " + coupon.id;
    p.width = label_width_units;
    p.height = label_height_units;
    p.told = "The code says: " + code;
    p.shapes.emplace_back(
        PictureBox{Role::guide, 0.5, 0.5, label_width_units - 1, label_height_units - 1}); // to cut along
    const auto cells = qr_code(code);
    const double cell = 112 / static_cast<double>(cells.size() + 2 * qr_quiet_zone);
    const double quiet = cell * static_cast<double>(qr_quiet_zone);
    p.shapes.emplace_back(PictureCells{4 + quiet, 4 + quiet, cell, cells});
    const double x = 120, room = label_width_units - x - 6;
    PictureText mark = fitted(x, 34, 22, 9, room / 1.08, coupon.id);
    mark.strong = true;
    p.shapes.emplace_back(std::move(mark));
    double y = 54;
    out.text = "    " + coupon.id;
    for (const auto &line : label_lines(coupon)) {
        p.shapes.emplace_back(fitted(x, y, 11, 7, room, line));
        out.text += "; " + line;
        y += 15;
    }
    out.text += "; code: " + code;
    return out;
}

} // namespace

Document document_of(const CouponLabels &labels) {
    Document doc;
    doc.title = "Labels";
    Tiles tiles;
    for (const auto &coupon : labels.coupons) tiles.figures.push_back(label_of_coupon(labels, coupon));
    doc.add(std::move(tiles));
    return doc;
}

} // namespace beadbook
