#include "operations/photo_measuring.hpp"

#include "criteria/quantity_name.hpp"
#include "facts/log_line.hpp"
#include "facts/picture_size.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"
#include "operations/photos.hpp"

#include <algorithm>
#include <initializer_list>

namespace beadbook {
namespace {

/// Hundredths of a pixel.
std::int64_t pixels(const std::string &text, const char *field, const char *of) {
    try {
        const Exact value = parse_amount(text, Dimension::number) * Exact(100);
        constexpr std::int64_t most = 1'000'000'000;
        return static_cast<std::int64_t>(std::min(value, Exact(most)).rounded());
    } catch (const InputError &) {
        throw refused("'" + shown(text) + "' is no " + of + "; expected a number of pixels").at(field);
    }
}

PicturePoint point(const std::string &x, const std::string &y) {
    return {pixels(x, "marks", "place of a mark"), pixels(y, "marks", "place of a mark")};
}

/// A mark beside the picture is a slip of the hand.
void check_on_picture(Office &office, const std::string &hash, std::initializer_list<PicturePoint> points) {
    const auto bytes = office.ledger().photo(hash);
    const auto side = bytes ? longer_side(*bytes) : std::nullopt;
    if (!side) return;
    for (const auto &one : points)
        if (one.x > *side * 100 || one.y > *side * 100)
            throw refused("a mark lies off the picture, which is " + std::to_string(*side) +
                          " pixels on its longer side")
                .at("marks");
}

/// Ruler and coupon may be of two units, so that a bare number is of neither.
Typed known_length(const std::string &text) {
    try {
        return parse_measured(text, Dimension::length, std::nullopt);
    } catch (const InputError &e) {
        throw refused(std::string("the known length: ") + e.what()).at("known");
    }
}

Quantity measure_called(const std::string &word) {
    for (const auto &key : measure_keys())
        if (key.word == word && info(key.quantity).dimension == Dimension::length) return key.quantity;
    throw refused("'" + shown(word) + "' is not measured on a photo; expected " +
                  listed(photo_measures(), "or"))
        .at("measure");
}

/// "measured on photo 3f2a91bc04de ± 0.012 in", which goes with the find.
std::string remark_of(const MeasuredOnPhoto &measured) {
    return "measured on photo " + short_hash(measured.photo) + " ± " + measured.size.uncertainty.text;
}

} // namespace

std::vector<std::string> photo_measures() {
    std::vector<std::string> out;
    for (const auto &key : measure_keys())
        // A picture shows no depth and no height.
        if (info(key.quantity).dimension == Dimension::length && key.quantity != Quantity::depth &&
            key.quantity != Quantity::height)
            out.emplace_back(key.word);
    return out;
}

MeasuredOnPhoto measure_on_photo(Office &office, const PhotoMeasureRequest &request) {
    const CouponState coupon = office.coupon(request.coupon);
    const Quantity measure = measure_called(request.measure);
    MeasuredOnPhoto out;
    out.photo = photo_on(coupon, request.photo);
    out.known = known_length(request.known);
    const auto &m = request.marks;
    const PhotoMarks marks{point(m[0], m[1]), point(m[2], m[3]), point(m[4], m[5]), point(m[6], m[7]),
                           pixels(request.off, "off", "number of pixels that a mark may be off by")};
    check_on_picture(office, out.photo.hash,
                     {marks.known_from, marks.known_to, marks.find_from, marks.find_to});
    out.size = size_on_photo(marks, out.known.value, coupon.record.unit());
    if (const IndicationRecord *find = coupon.indication(out.photo.find)) {
        IndicationRecord measured = *find;
        measured.measures[measure] = out.size.size;
        measured.remark += (measured.remark.empty() ? "" : "; ") + remark_of(out);
        out.find = find->number;
        out.line = print_log_line(measured);
    } else {
        out.line = request.measure + " " + out.size.size.text + " # " + remark_of(out);
    }
    for (const ExamRecord *exam : coupon.open_exams()) out.open_exams.push_back(*exam);
    return out;
}

} // namespace beadbook
