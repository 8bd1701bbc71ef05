#include "scene/picture/picture_words.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace beamfork {

namespace {

// A name and the labels that are told below it.
struct NamedPart {
    std::vector<std::size_t> rows;
    std::vector<Leader> leaders;  // `to` is not known yet
    int priority = 0;
    int along = 0;
};

bool is_eye(const Label& label) {
    return label.role == LabelRole::left_eye || label.role == LabelRole::right_eye;
}

// Whether any had more rows than that.
bool shorten(std::vector<NamedPart>& parts, std::size_t most_rows) {
    bool is_shorter = false;
    for (NamedPart& part : parts) {
        if (part.rows.size() <= most_rows) continue;
        is_shorter = true;
        part.rows.resize(most_rows);
        std::erase_if(part.leaders, [&](const Leader& leader) {
            return part.leaders.size() > 1
                   && std::find(part.rows.begin(), part.rows.end(), leader.label)
                          == part.rows.end();
        });
    }
    return is_shorter;
}

class WordLayout {
public:
    WordLayout(std::span<const Label> labels,
               const Camera& camera,
               Viewport viewport,
               const LabelMeasure& measure)
        : labels_(labels), camera_(camera), viewport_(viewport), measure_(measure) {}

    [[nodiscard]] bool is_name(std::size_t label) const {
        return labels_[label].role == LabelRole::part && labels_[label].part >= 0;
    }
    [[nodiscard]] bool is_told_below_a_name(std::size_t label) const {
        if (is_name(label) || labels_[label].part < 0
            || labels_[label].role == LabelRole::dimension)
            return false;
        return std::any_of(labels_.begin(), labels_.end(), [&](const Label& other) {
            return other.role == LabelRole::part && other.part == labels_[label].part;
        });
    }

    // Those that stand in no box with others, each near its place.
    [[nodiscard]] std::vector<PlacedLabel> alone(const LightCover& cover, float foot_px) const {
        std::vector<std::size_t> wanted;
        std::vector<Label> those;
        for (std::size_t i = 0; i < labels_.size(); ++i) {
            if (labels_[i].on_hover || is_name(i) || is_told_below_a_name(i) || is_eye(labels_[i]))
                continue;
            wanted.push_back(i);
            those.push_back(labels_[i]);
        }
        auto placed = lay_out_labels(those, camera_, viewport_, measure_, cover, foot_px);
        for (PlacedLabel& label : placed)
            label.label = wanted[label.label];
        return placed;
    }

    // In the order of the light.
    [[nodiscard]] std::vector<NamedPart> named_parts(bool with_hidden_rows) const {
        std::vector<NamedPart> parts;
        for (std::size_t i = 0; i < labels_.size(); ++i) {
            if (!is_name(i)) continue;
            NamedPart part{{i}, {}, labels_[i].priority, labels_[i].along};
            point_at(part, i);
            for (std::size_t k = 0; k < labels_.size(); ++k) {
                const Label& row = labels_[k];
                if (k == i || row.part != labels_[i].part || !is_told_below_a_name(k)) continue;
                if (row.on_hover && !with_hidden_rows) continue;
                part.rows.push_back(k);
                part.priority = std::min(part.priority, row.priority);
                if (row.role == LabelRole::clipped) point_at(part, k);
            }
            if (!part.leaders.empty()) parts.push_back(std::move(part));
        }
        std::stable_sort(parts.begin(), parts.end(),
                         [](const NamedPart& a, const NamedPart& b) { return a.along < b.along; });
        return parts;
    }

    // Beside the train, in the order of the light; those that have room.
    [[nodiscard]] std::vector<PlacedWords> columns(const std::vector<NamedPart>& parts,
                                                   const LightCover& cover) const {
        std::vector<ColumnName> names;
        for (const NamedPart& part : parts) {
            ColumnName name{size_of(part.rows), row_px(), {}, part.priority};
            for (const Leader& leader : part.leaders)
                for (const bool is_left : {true, false})
                    name.places[is_left ? 0 : 1].push_back(
                        place_towards(leader.label, is_left).value_or(leader.from));
            names.push_back(std::move(name));
        }
        auto placed = lay_out_columns(names, viewport_, cover);
        std::sort(placed.begin(), placed.end(),
                  [](const NameInColumn& a, const NameInColumn& b) { return a.name < b.name; });
        std::vector<PlacedWords> words;
        for (const NameInColumn& one : placed) {
            PlacedWords name{parts[one.name].rows, one.box, parts[one.name].leaders};
            for (Leader& leader : name.leaders) {
                leader.from = place_towards(leader.label, one.is_left).value_or(leader.from);
                leader.to = one.leader;
            }
            words.push_back(std::move(name));
        }
        return words;
    }

    [[nodiscard]] std::size_t told_by(const std::vector<PlacedWords>& names) const {
        std::size_t told = names.size();
        for (const PlacedWords& name : names)
            told += std::count_if(name.rows.begin(), name.rows.end(), [&](std::size_t row) {
                return labels_[row].role == LabelRole::clipped;
            });
        return told;
    }

    [[nodiscard]] glm::vec2 size_of(const std::vector<std::size_t>& rows) const {
        const float row = row_px();
        glm::vec2 size{0, row / 5};  // the rows share one edge
        for (const std::size_t i : rows)
            size = {std::max(size.x, measure_(labels_[i]).x), size.y + row - row / 5};
        return size;
    }
    [[nodiscard]] float row_px() const { return measure_({{}, "a", LabelRole::part, 0, 0}).y; }

    // Beside the eyes, away from each other; where one stands before the other, in one box.
    [[nodiscard]] std::vector<PlacedWords> eye_names(const LightCover& cover) const {
        std::vector<std::size_t> eyes;
        std::vector<glm::vec2> at;
        for (std::size_t i = 0; i < labels_.size(); ++i) {
            const auto seen = is_eye(labels_[i]) ? place_of(i) : std::nullopt;
            if (!seen) continue;
            eyes.push_back(i);
            at.push_back(*seen);
        }
        std::vector<PlacedWords> placed;
        if (eyes.size() != 2) {
            if (eyes.size() == 1) put_beside(placed, {eyes[0]}, at[0], {1, 0}, cover);
            return placed;
        }
        const glm::vec2 apart = at[1] - at[0];
        const float row = row_px();
        if (std::abs(apart.x) < 1.5F * row && std::abs(apart.y) < 1.5F * row) {
            const glm::vec3 viewer = eye_position(camera_);
            if (glm::distance(viewer, labels_[eyes[1]].at)
                < glm::distance(viewer, labels_[eyes[0]].at))
                std::swap(eyes[0], eyes[1]);
            put_beside(placed, eyes, 0.5F * (at[0] + at[1]), {1, 0}, cover);
            return placed;
        }
        const glm::vec2 away = std::abs(apart.x) >= std::abs(apart.y)
                                   ? glm::vec2{apart.x > 0 ? 1.F : -1.F, 0}
                                   : glm::vec2{0, apart.y > 0 ? 1.F : -1.F};
        put_beside(placed, {eyes[0]}, at[0], -away, cover);
        put_beside(placed, {eyes[1]}, at[1], away, cover);
        return placed;
    }

    [[nodiscard]] std::optional<glm::vec2> place_of(std::size_t label) const {
        const auto at = project(camera_, labels_[label].at, viewport_);
        const bool is_inside =
            at && at->x >= 0 && at->y >= 0 && at->x <= viewport_.width && at->y <= viewport_.height;
        return is_inside ? at : std::nullopt;
    }

    // Of a label that has two places the one farther to that side.
    [[nodiscard]] std::optional<glm::vec2> place_towards(std::size_t label, bool is_left) const {
        const auto at = place_of(label);
        if (!at || !labels_[label].twin) return at;
        const auto twin = project(camera_, *labels_[label].twin, viewport_);
        const bool is_farther = twin && (is_left ? twin->x < at->x : twin->x > at->x);
        return is_farther && twin->x > 0 && twin->x < viewport_.width ? twin : at;
    }

    [[nodiscard]] PixelBox inside(PixelBox box) const {
        const glm::vec2 size = box.high - box.low;
        const glm::vec2 most =
            glm::vec2(viewport_.width, viewport_.height) - size - label_margin_px;
        box.low = glm::max(glm::min(box.low, most), glm::vec2(label_margin_px));
        return {box.low, box.low + size};
    }

private:
    void point_at(NamedPart& part, std::size_t label) const {
        if (const auto at = place_of(label)) part.leaders.push_back({label, *at, {}});
    }

    // The radius of an eye away from its middle; not where something else is.
    void put_beside(std::vector<PlacedWords>& placed,
                    const std::vector<std::size_t>& rows,
                    glm::vec2 at,
                    glm::vec2 away,
                    const LightCover& cover) const {
        constexpr float eye_mm = 13;
        const float off = eye_mm / mm_per_pixel(camera_, viewport_) + row_px() / 4;
        const glm::vec2 half = size_of(rows) * 0.5F;
        const glm::vec2 centre = at + away * (off + glm::abs(glm::dot(away, half)));
        const PixelBox box = inside({centre - half, centre + half});
        const auto meets = [&](const PixelBox& other) {
            return box.low.x < other.high.x && other.low.x < box.high.x && box.low.y < other.high.y
                   && other.low.y < box.high.y;
        };
        if (std::any_of(cover.taken.begin(), cover.taken.end(), meets)
            || std::any_of(placed.begin(), placed.end(),
                           [&](const PlacedWords& other) { return meets(other.box); }))
            return;
        placed.push_back({rows, box, {}});
    }

    std::span<const Label> labels_;
    const Camera& camera_;
    Viewport viewport_;
    const LabelMeasure& measure_;
};

}  // namespace

PictureWords lay_out_words(std::span<const Label> labels,
                           const Camera& camera,
                           Viewport viewport,
                           const LabelMeasure& measure,
                           const LightCover& cover,
                           float foot_px) {
    const WordLayout layout(labels, camera, viewport, measure);
    LightCover now = cover;
    if (foot_px > 0)
        now.taken.push_back({{0, viewport.height - foot_px}, {viewport.width, viewport.height}});
    PictureWords words{layout.alone(now, foot_px), {}};
    for (const PlacedLabel& label : words.alone)
        now.taken.push_back({label.low, label.high});
    const std::vector<PlacedWords> eyes = layout.eye_names(now);
    for (const PlacedWords& eye : eyes)
        now.taken.push_back(eye.box);
    // Where not all have room, what is told of the parts makes way for names: first all but the worst of it. What is
    // clipped counts as much as a name.
    std::size_t most_told = 0;
    for (const std::size_t most_rows : {std::size_t{4}, std::size_t{2}, std::size_t{1}}) {
        auto parts = layout.named_parts(false);
        const bool is_shorter = shorten(parts, most_rows);
        if (!words.names.empty() && !is_shorter) continue;
        auto placed = layout.columns(parts, now);
        const std::size_t told = layout.told_by(placed);
        const bool all_have_room = placed.size() == std::min(parts.size(), most_names);
        if (told > most_told) {
            most_told = told;
            words.names = std::move(placed);
        }
        if (all_have_room) break;
    }
    words.names.insert(words.names.end(), eyes.begin(), eyes.end());
    return words;
}

std::vector<PixelBox> boxes_of(const PictureWords& words) {
    std::vector<PixelBox> boxes;
    for (const PlacedLabel& label : words.alone)
        boxes.push_back({label.low, label.high});
    for (const PlacedWords& name : words.names)
        boxes.push_back(name.box);
    return boxes;
}

std::optional<PlacedWords> whole_words_of(int part,
                                          const PictureWords& words,
                                          std::span<const Label> labels,
                                          const Camera& camera,
                                          Viewport viewport,
                                          const LabelMeasure& measure) {
    const WordLayout layout(labels, camera, viewport, measure);
    for (const NamedPart& named : layout.named_parts(true)) {
        if (labels[named.rows.front()].part != part) continue;
        const auto there =
            std::find_if(words.names.begin(), words.names.end(), [&](const PlacedWords& other) {
                return other.rows.front() == named.rows.front();
            });
        const glm::vec2 size = layout.size_of(named.rows);
        if (there != words.names.end()) {
            if (there->rows.size() == named.rows.size()) return *there;
            const bool grows_left = there->leaders.front().to.x >= there->box.high.x - 1;
            const float left = grows_left ? there->box.high.x - size.x : there->box.low.x;
            const glm::vec2 low{left, there->box.low.y};
            return PlacedWords{named.rows, layout.inside({low, low + size}), there->leaders};
        }
        const float off = 2 * layout.row_px();
        const glm::vec2 at = named.leaders.front().from;
        const float side = at.x < viewport.width / 2 ? off : -off - size.x;
        const glm::vec2 low{at.x + side, at.y - off};
        PlacedWords beside{named.rows, layout.inside({low, low + size}), {named.leaders.front()}};
        beside.leaders.front().to = glm::clamp(at, beside.box.low, beside.box.high);
        return beside;
    }
    return std::nullopt;
}

}  // namespace beamfork
