#include "ui/picture/label_overlay.hpp"

#include <algorithm>

#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

namespace {

// The role whose colour the words have; nothing for plain text.
std::optional<ColourRole> colour_of(LabelRole role) {
    switch (role) {
    case LabelRole::dimension: return ColourRole::shortfall;
    case LabelRole::clipped: return ColourRole::clipped;
    case LabelRole::left_eye: return ColourRole::left_arm;
    case LabelRole::right_eye: return ColourRole::right_arm;
    case LabelRole::good: return ColourRole::good;
    case LabelRole::part:
    case LabelRole::note:
    case LabelRole::title: break;
    }
    return std::nullopt;
}

TextFace face_of(LabelRole role) {
    switch (role) {
    case LabelRole::dimension: return TextFace::large;
    case LabelRole::note:
    case LabelRole::good: return TextFace::regular;
    default: return TextFace::bold;
    }
}

float line_height(TextFace face) {
    return face == TextFace::large ? font(face)->FontSize : ImGui::GetTextLineHeight();
}

glm::vec2 measured(const Label& label) {
    const TextFace face = face_of(label.role);
    return {text_width(label.text, face) + grid(3), line_height(face) + grid(1)};
}

// 1 as ever, 0 gone: names fade twice as fast as bodies, so that half way there are only those of one step.
float shown_share(const Label& label, const Emphasis& emphasis) {
    const float results = label.is_result() ? emphasis.results : 1;
    return std::clamp(2 * results * (1 - emphasis.fade_of(label.part)) - 1, 0.0F, 1.0F);
}

// The ink at that strength.
ImU32 weakened(ImU32 ink, float share) {
    ImVec4 strong = ImGui::ColorConvertU32ToFloat4(ink);
    strong.w *= share;
    return ImGui::ColorConvertFloat4ToU32(strong);
}

void draw_inset(ImDrawList& list, ImVec2 origin, const TrainInset& inset, const LabelLook& look) {
    const bool on_white = look.options.on_light_ground();
    const auto at = [&](glm::vec2 px) { return ImVec2{origin.x + px.x, origin.y + px.y}; };
    list.AddRectFilled(at(inset.box.low), at(inset.box.high),
                       on_white ? IM_COL32(255, 255, 255, 225) : colour(Tone::ground, 0.78F),
                       grid(1));
    list.AddRect(at(inset.box.low), at(inset.box.high), colour(Tone::line), grid(1));
    for (const InsetBody& body : inset.bodies) {
        std::vector<ImVec2> corners;
        for (const glm::vec2 corner : body.outline)
            corners.push_back(at(corner));
        const float share = body.part == look.hot_part ? 0.9F : 0.3F;
        list.AddConvexPolyFilled(corners.data(), static_cast<int>(corners.size()),
                                 colour(ColourRole::metal, share));
    }
    list.AddRect(at(inset.seen.low), at(inset.seen.high), colour(Tone::accent), 0, 0,
                 std::max(1.0F, grid(0.35F)));
}

class WordDrawer {
public:
    WordDrawer(ImDrawList& list, ImVec2 origin, const LabelLook& look, const LaidWords& words)
        : list_(list), origin_(origin), look_(look), labels_(words.labels) {}

    void leaders_of(const PlacedWords& words, glm::vec2 shift) const {
        for (const Leader& leader : words.leaders)
            draw_leader(labels_[leader.label], leader.from, leader.to + shift);
    }

    void draw(const PlacedWords& words, glm::vec2 shift, bool is_raised = false) const {
        const PixelBox box{words.box.low + shift, words.box.high + shift};
        const Label& first = labels_[words.rows.front()];
        draw_ground(first, box, is_raised);
        float y = box.low.y + grid(0.5F);
        for (const std::size_t row : words.rows) {
            draw_row(labels_[row], {box.low.x + grid(1.5F), y});
            y += line_height(face_of(labels_[row].role));
        }
    }

    void draw(const PlacedLabel& placed, glm::vec2 shift) const {
        const Label& label = labels_[placed.label];
        if (placed.has_leader) draw_leader(label, placed.anchor, placed.leader + shift);
        draw(PlacedWords{{placed.label}, {placed.low, placed.high}, {}}, shift);
    }

private:
    [[nodiscard]] ImVec2 on_list(glm::vec2 at) const {
        return {origin_.x + at.x, origin_.y + at.y};
    }

    // On white the words' own colours would be too pale: they are black, and the leaders keep the colour.
    [[nodiscard]] ImU32 ink_of(const Label& label) const {
        if (look_.options.on_light_ground()) return IM_COL32(24, 32, 42, 255);
        if (label.role == LabelRole::note) return colour(Tone::text_dim);
        const auto role = colour_of(label.role);
        return role ? text_colour(*role) : colour(Tone::text);
    }

    void draw_leader(const Label& label, glm::vec2 from, glm::vec2 to) const {
        const float share = shown_share(label, look_.emphasis);
        const bool is_clipped = label.role == LabelRole::clipped;
        const bool on_white = look_.options.on_light_ground();
        const ImU32 ink = is_clipped ? colour(ColourRole::clipped)
                          : on_white ? IM_COL32(60, 72, 86, 255)
                                     : colour(Tone::text);
        const ImU32 behind = on_white ? IM_COL32(255, 255, 255, 150) : colour(Tone::ground, 0.6F);
        const float width = std::max(1.0F, grid(0.3F));
        list_.AddLine(on_list(from), on_list(to), weakened(behind, share), 3 * width);
        list_.AddLine(on_list(from), on_list(to), weakened(ink, 0.85F * share), width);
        list_.AddCircleFilled(on_list(from), 1.8F * width, weakened(ink, share));
    }

    void draw_ground(const Label& label, const PixelBox& box, bool is_raised) const {
        const float share = shown_share(label, look_.emphasis);
        const bool hot = label.part >= 0 && label.part == look_.hot_part;
        const bool selected =
            label.part >= 0 && look_.selected_part == static_cast<std::size_t>(label.part);
        const float cover = is_raised ? 0.96F : 0.72F;
        const ImU32 ground = look_.options.on_light_ground()
                                 ? IM_COL32(255, 255, 255, is_raised ? 250 : 215)
                                 : colour(hot ? Tone::raised_hot : Tone::ground, cover);
        const ImVec2 low = on_list(box.low);
        const ImVec2 high = on_list(box.high);
        list_.AddRectFilled(low, high, weakened(ground, share), grid(1));
        if (label.role == LabelRole::dimension)
            list_.AddRect(low, high, weakened(colour(ColourRole::shortfall), share), grid(1), 0,
                          std::max(1.0F, grid(0.4F)));
        if (selected) list_.AddRect(low, high, colour(Tone::accent), grid(1));
    }

    void draw_row(const Label& label, glm::vec2 at) const {
        const float share = shown_share(label, look_.emphasis);
        text_at(list_, on_list(at), label.text, weakened(ink_of(label), share),
                face_of(label.role));
    }

    ImDrawList& list_;
    ImVec2 origin_;
    const LabelLook& look_;
    const std::vector<Label>& labels_;
};

bool is_as_before(const LaidBefore& before,
                  const std::vector<Label>& labels,
                  Viewport viewport,
                  const LabelLook& look,
                  const LightCover& cover) {
    return before.camera == look.camera && before.viewport.width == viewport.width
           && before.viewport.height == viewport.height && before.foot_px == look.foot_px
           && before.letters_px == ImGui::GetFontSize() && before.cover == cover
           && before.labels == labels;
}

}  // namespace

LaidBefore* kept_in(std::shared_ptr<LaidBefore>& laid) {
    if (laid == nullptr) laid = std::make_shared<LaidBefore>();
    return laid.get();
}

LaidWords lay_out_labels(Viewport viewport, const LabelLook& look) {
    LaidWords words;
    if (!look.options.labels) return words;
    for (const Label& label : look.frame.labels)
        if (shown_share(label, look.emphasis) > 0) words.labels.push_back(label);
    LightCover cover =
        look.cover != nullptr ? *look.cover : light_cover(look.frame, look.camera, viewport);
    words.inset = train_inset(look.frame, look.camera, viewport, look.foot_px);
    if (words.inset) cover.taken.push_back(words.inset->box);
    if (look.before != nullptr && is_as_before(*look.before, words.labels, viewport, look, cover)) {
        words.placed = look.before->placed;
        return words;
    }
    words.placed =
        lay_out_words(words.labels, look.camera, viewport, measured, cover, look.foot_px);
    if (look.before != nullptr) {
        *look.before = {words.labels,         look.camera,      viewport,    look.foot_px,
                        ImGui::GetFontSize(), std::move(cover), words.placed};
    }
    return words;
}

void draw_labels(ImDrawList& list,
                 ImVec2 origin,
                 Viewport viewport,
                 const LabelLook& look,
                 const LaidWords& words) {
    if (!look.options.labels) return;
    if (look.glide != nullptr) look.glide->begin(viewport, ImGui::GetIO().DeltaTime);
    const auto shift_of = [&](std::size_t label, glm::vec2 low) {
        if (look.glide == nullptr) return glm::vec2{0};
        return look.glide->place(words.labels[label].text, low) - low;
    };
    if (words.inset) draw_inset(list, origin, *words.inset, look);
    const WordDrawer drawer(list, origin, look, words);
    std::vector<glm::vec2> shifts;
    for (const PlacedWords& name : words.placed.names) {
        shifts.push_back(shift_of(name.rows.front(), name.box.low));
        drawer.leaders_of(name, shifts.back());
    }
    for (std::size_t i = 0; i < shifts.size(); ++i)
        drawer.draw(words.placed.names[i], shifts[i]);
    for (const PlacedLabel& label : words.placed.alone)
        drawer.draw(label, shift_of(label.label, label.low));
    if (look.glide != nullptr) look.glide->end();
    const auto whole =
        whole_words_of(look.hot_part, words.placed, words.labels, look.camera, viewport, measured);
    if (whole) {
        drawer.leaders_of(*whole, {});
        drawer.draw(*whole, {}, true);
    }
}

void draw_labels(ImDrawList& list, ImVec2 origin, Viewport viewport, const LabelLook& look) {
    draw_labels(list, origin, viewport, look, lay_out_labels(viewport, look));
}

}  // namespace beamfork
