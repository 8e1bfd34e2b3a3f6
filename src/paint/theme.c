#include "paint/theme.h"

/* Colours are 0xRRGGBBAA; 0 is none. */
#define HEX(h)                                                                                     \
  {                                                                                                \
    ((h) >> 24 & 0xff) / 255.0, ((h) >> 16 & 0xff) / 255.0, ((h) >> 8 & 0xff) / 255.0,             \
        ((h) &0xff) / 255.0                                                                        \
  }
#define COLOURS(f, e, l, h)                                                                        \
  .fill = HEX (f), .fill_end = HEX (e), .line = HEX (l), .hatch_ink = HEX (h)

#define NO HATCH_NONE
#define DIA HATCH_DIAGONAL
#define CRO HATCH_CROSS
#define DOT HATCH_DOTS
#define CON HATCH_CONCRETE

/* Small letters may be smaller on paper, which has no pixels. */
#define PAPER_SMALL 0.82

/* clang-format off */
/* One row for each style: its word, line width, dash, hatch, text size, small size, bold; then fill, the
 * fill's end, line and hatch ink of the light, the dark and the paper theme. Light is the warm
 * paper of a drawing board; dark is drawn anew: blocks lighter than the ground, joints cut into
 * them, inks lifted until they read; paper says everything with black, weight and hatch. */
#define STYLES(S) \
S (STYLE_PAPER, "paper", 0, 0, NO, 0, 0, 0, \
   (0xF6F3ECFF, 0, 0, 0), (0x1B1C1EFF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_GROUND, "ground", 0, 0, NO, 0, 0, 0, \
   (0xE7DFD1FF, 0, 0, 0), (0x292722FF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_GROUND_LINE, "ground-line", 1.5, 0, NO, 0, 0, 0, \
   (0, 0, 0x8A8172FF, 0), (0, 0, 0x8F8778FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_WALL_OUTLINE, "wall-outline", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x8E8677FF, 0), (0, 0, 0x77726AFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_WALL_BODY, "wall-body", 1, 0, NO, 0, 0, 0, \
   (0xEFEBE2FF, 0, 0xD8D1C4FF, 0), (0x242528FF, 0, 0x34363AFF, 0), (0xFFFFFFFF, 0, 0x999999FF, 0)) \
S (STYLE_BARE_COURSE, "bare-course", 1, 0, NO, 0, 0, 0, \
   (0xFCFBF8FF, 0, 0xD8D1C4FF, 0), (0x3D3F43FF, 0, 0x505359FF, 0), (0xFFFFFFFF, 0, 0xAAAAAAFF, 0)) \
S (STYLE_PIECE, "piece", 1, 0, NO, 0, 0, 0, \
   (0xFCFBF8FF, 0, 0xBDB5A7FF, 0), (0x3D3F43FF, 0, 0x222326FF, 0), (0xFFFFFFFF, 0, 0x6E6E6EFF, 0)) \
S (STYLE_PIECE_CUT, "piece-cut", 1, 0, DIA, 0, 0, 0, \
   (0xF1E2BFFF, 0, 0xBDAA80FF, 0xDCC38CFF), (0x57482AFF, 0, 0x222326FF, 0x7C673BFF), \
   (0xFFFFFFFF, 0, 0x6E6E6EFF, 0xC2C2C2FF)) \
S (STYLE_PIECE_BREACH, "piece-breach", 1, 0, CRO, 0, 0, 0, \
   (0xF6D9C6FF, 0, 0xB4541AFF, 0xDDA17EFF), (0x5E2F22FF, 0, 0xF08A62FF, 0x8F4A35FF), \
   (0xFFFFFFFF, 0, 0x000000FF, 0x9A9A9AFF)) \
S (STYLE_PIECE_LABEL, "piece-label", 0, 0, NO, 9.5, 7.5, 1, \
   (0, 0, 0x6B4F10FF, 0), (0, 0, 0xF3DDA6FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STANDING, "standing", 1, 0, NO, 0, 0, 0, \
   (0xD9D5CAFF, 0, 0xB7B0A3FF, 0), (0x2A3133FF, 0, 0x40494CFF, 0), (0xDADADAFF, 0, 0x8A8A8AFF, 0)) \
S (STYLE_STANDING_CUT, "standing-cut", 1, 0, DIA, 0, 0, 0, \
   (0xD9D5CAFF, 0, 0xB7B0A3FF, 0xC8C2B4FF), (0x2A3133FF, 0, 0x40494CFF, 0x384144FF), \
   (0xDADADAFF, 0, 0x8A8A8AFF, 0xBEBEBEFF)) \
S (STYLE_STANDING_LABEL, "standing-label", 0, 0, NO, 9.5, 7.5, 0, \
   (0, 0, 0x544F46FF, 0), (0, 0, 0xB3ADA1FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STANDING_LINE, "standing-line", 2.5, 0, NO, 0, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STANDING_TAB, "standing-tab", 0, 0, NO, 9.5, 0, 1, \
   (0x2B2A27FF, 0, 0xF6F3ECFF, 0), (0xECE7DDFF, 0, 0x1B1C1EFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_DEVIATION, "deviation", 0, 0, NO, 10, 0, 0, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xECE7DDFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_DEVIATION_OVER, "deviation-over", 0, 0, NO, 10, 0, 1, \
   (0xF6F3ECFF, 0, 0x9C2F22FF, 0), (0x1B1C1EFF, 0, 0xF08A62FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_DEVIATION_MARK, "deviation-mark", 1, 0, NO, 0, 0, 0, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xECE7DDFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_DEVIATION_MARK_OVER, "deviation-mark-over", 1, 0, NO, 0, 0, 0, \
   (0x9C2F22FF, 0, 0x9C2F22FF, 0), (0xF08A62FF, 0, 0xF08A62FF, 0), (0x000000FF, 0, 0x000000FF, 0)) \
S (STYLE_PIN, "pin", 0, 0, NO, 0, 0, 0, \
   (0x1F5F6BFF, 0, 0, 0), (0x7ACBD8FF, 0, 0, 0), (0x000000FF, 0, 0, 0)) \
S (STYLE_BREACH_LINE, "breach-line", 3, 0, NO, 0, 0, 0, \
   (0, 0, 0xB4541AFF, 0), (0, 0, 0xF08A62FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_RETURN, "return", 1, 0, NO, 0, 0, 0, \
   (0xE4DED0FF, 0, 0xBDB5A7FF, 0), (0x2B2C30FF, 0, 0x222326FF, 0), (0xE9E9E9FF, 0, 0x6E6E6EFF, 0)) \
S (STYLE_MOVEMENT_JOINT, "movement-joint", 1, 0, NO, 0, 0, 0, \
   (0xA9C6BEFF, 0, 0x2B2A27FF, 0), (0x2F5A55FF, 0, 0xECE7DDFF, 0), (0x4A4A4AFF, 0, 0x000000FF, 0)) \
S (STYLE_PALLET, "pallet", 1, 0, NO, 0, 0, 0, \
   (0xEAD9B5FF, 0, 0x7A5C22FF, 0), (0x4E3F24FF, 0, 0xD8B976FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PALLET_TEXT, "pallet-text", 0, 0, NO, 9.5, 7.5, 1, \
   (0, 0, 0x4C3A12FF, 0), (0, 0, 0xF3E3BDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PACKING, "packing", 0, 0, DOT, 0, 0, 0, \
   (0xCFC7B8FF, 0, 0, 0x8E8677FF), (0x6B675FFF, 0, 0, 0x9B968CFF), (0xE0E0E0FF, 0, 0, 0x555555FF)) \
S (STYLE_BED, "bed", 0, 0, DOT, 0, 0, 0, \
   (0xCFC7B8FF, 0, 0, 0x9B9283FF), (0x5A5750FF, 0, 0, 0x827D73FF), (0xE0E0E0FF, 0, 0, 0x777777FF)) \
S (STYLE_CAP, "cap", 1, 0, CON, 0, 0, 0, \
   (0xDAD9D4FF, 0, 0x7D796FFF, 0x98958CFF), (0x46484AFF, 0, 0x8B8982FF, 0x7A7A76FF), \
   (0xFFFFFFFF, 0, 0x000000FF, 0x666666FF)) \
S (STYLE_OPENING_WINDOW, "opening-window", 1.5, 0, NO, 0, 0, 0, \
   (0xDDE7E9FF, 0xE8EFF0FF, 0x2B2A27FF, 0), (0x1F3137FF, 0x263A40FF, 0xA9C4CAFF, 0), \
   (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_OPENING_DOOR, "opening-door", 1.5, 0, NO, 0, 0, 0, \
   (0xECE7DAFF, 0, 0x2B2A27FF, 0), (0x302B24FF, 0, 0xCDBD9FFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_OPENING_VOID, "opening-void", 1.5, 0, NO, 0, 0, 0, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xB7B1A5FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_OPENING_LINE, "opening-line", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x2B2A2755, 0), (0, 0, 0xD5D0C455, 0), (0, 0, 0x00000055, 0)) \
S (STYLE_OPENING_LABEL, "opening-label", 0, 0, NO, 12.5, 10, 1, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xF2EEE5FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_OPENING_SIZE, "opening-size", 0, 0, NO, 10, 8.5, 0, \
   (0, 0, 0x555149FF, 0), (0, 0, 0xC4C7C2FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_STEEL, "steel", 2, 6, NO, 0, 0, 0, \
   (0, 0, 0x9C3D2EFF, 0), (0, 0, 0xEE8A72FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STEEL_LAP, "steel-lap", 2, 0, NO, 0, 0, 0, \
   (0, 0, 0x9C3D2EFF, 0), (0, 0, 0xEE8A72FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_TIE, "tie", 2.5, 0, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_TIE_END, "tie-end", 1, 0, NO, 0, 0, 0, \
   (0x1F5F6BFF, 0, 0xFCFBF8FF, 0), (0x7ACBD8FF, 0, 0x222326FF, 0), (0x000000FF, 0, 0xFFFFFFFF, 0)) \
S (STYLE_ROD, "rod", 1, 0, NO, 0, 0, 0, \
   (0xFFFEFBFF, 0, 0x8E8677FF, 0), (0x26272AFF, 0, 0x77726AFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_ROD_NUMBER, "rod-number", 0, 0, NO, 10, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_ROD_HEIGHT, "rod-height", 0, 0, NO, 9.5, 0, 0, \
   (0, 0, 0x5F5A51FF, 0), (0, 0, 0xB3ADA1FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_ROD_CURRENT, "rod-current", 1, 0, NO, 0, 0, 0, \
   (0x1F5F6BFF, 0, 0x1F5F6BFF, 0), (0x7ACBD8FF, 0, 0x7ACBD8FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_ROD_CURRENT_NUMBER, "rod-current-number", 0, 0, NO, 10, 0, 1, \
   (0, 0, 0xFFFFFFFF, 0), (0, 0, 0x12282CFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_ROD_STEEL, "rod-steel", 1, 0, NO, 0, 0, 0, \
   (0x9C3D2EFF, 0, 0x9C3D2EFF, 0), (0xEE8A72FF, 0, 0xEE8A72FF, 0), (0x000000FF, 0, 0x000000FF, 0)) \
S (STYLE_ROD_BED, "rod-bed", 1, 0, NO, 0, 0, 0, \
   (0xF6F3ECFF, 0, 0xA39B8CFF, 0), (0x1B1C1EFF, 0, 0x77726AFF, 0), (0, 0, 0, 0)) \
S (STYLE_ROD_BED_HIT, "rod-bed-hit", 0, 0, NO, 0, 0, 0, \
   (0, 0, 0, 0), (0, 0, 0, 0), (0, 0, 0, 0)) \
S (STYLE_ROD_MARK, "rod-mark", 0, 0, NO, 0, 0, 0, \
   (0x1F5F6BFF, 0, 0, 0), (0x7ACBD8FF, 0, 0, 0), (0x000000FF, 0, 0, 0)) \
S (STYLE_TAPE, "tape", 1, 0, NO, 0, 0, 0, \
   (0xFFFEFBFF, 0, 0x8E8677FF, 0), (0x26272AFF, 0, 0x77726AFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_TAPE_GAP, "tape-gap", 1, 0, NO, 0, 0, 0, \
   (0xDDD3C2FF, 0, 0xB9AF9EFF, 0), (0x302E28FF, 0, 0x514D45FF, 0), (0xE4E4E4FF, 0, 0x000000FF, 0)) \
S (STYLE_TAPE_TICK, "tape-tick", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x6F6A60FF, 0), (0, 0, 0xA9A397FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_TAPE_NUMBER, "tape-number", 0, 0, NO, 9.5, 0, 0, \
   (0, 0, 0x544F47FF, 0), (0, 0, 0xBDB7ABFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_TAPE_LABEL, "tape-label", 0, 0, NO, 9.5, 0, 1, \
   (0, 0, 0x1A525DFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_DIMENSION_LINE, "dimension-line", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x8E8677FF, 0), (0, 0, 0x7F7A70FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_DIMENSION_TICK, "dimension-tick", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x4A4740FF, 0), (0, 0, 0xB3ADA1FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_DIMENSION_TEXT, "dimension-text", 0, 0, NO, 11, 9, 0, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xECE7DDFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_DIMENSION_TOTAL, "dimension-total", 0, 0, NO, 11.5, 0, 1, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xECE7DDFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_FOOT_TEXT, "foot-text", 0, 0, NO, 10, 0, 0, \
   (0xE7DFD1FF, 0, 0x2B2A27FF, 0), (0x292722FF, 0, 0xECE7DDFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_SELECTED, "selected", 2.5, 0, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SELECTED_TEXT, "selected-text", 0, 0, NO, 11, 9, 1, \
   (0xF6F3ECFF, 0, 0x1A525DFF, 0), (0x1B1C1EFF, 0, 0x7ACBD8FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_HANDLE, "handle", 2, 0, NO, 0, 0, 0, \
   (0xFFFFFFFF, 0, 0x1F5F6BFF, 0), (0x1B1C1EFF, 0, 0x7ACBD8FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_HELD, "held", 2, 0, NO, 0, 0, 0, \
   (0x1F5F6B33, 0, 0x1F5F6BFF, 0), (0x7ACBD840, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_HIGHLIGHT, "highlight", 2, 0, NO, 0, 0, 0, \
   (0x1F5F6B33, 0, 0x1F5F6BFF, 0), (0x7ACBD840, 0, 0x7ACBD8FF, 0), (0x00000022, 0, 0x000000FF, 0)) \
S (STYLE_GUIDE, "guide", 1, 4, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BAA, 0), (0, 0, 0x7ACBD8AA, 0), (0, 0, 0x000000AA, 0)) \
S (STYLE_GUIDE_TEXT, "guide-text", 0, 0, NO, 10, 0, 1, \
   (0x1F5F6BFF, 0, 0xFFFFFFFF, 0), (0x7ACBD8FF, 0, 0x12282CFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_GHOST, "ghost", 2, 5, NO, 0, 0, 0, \
   (0x1F5F6B1F, 0, 0x1F5F6BFF, 0), (0x7ACBD82B, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_FOCUS, "focus", 2, 3, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SKY_HIGH, "client-sky-high", 0, 0, NO, 0, 0, 0, \
   (0xDCE7EBFF, 0, 0, 0), (0x12181FFF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_CLIENT_SKY, "client-sky", 0, 0, NO, 0, 0, 0, \
   (0xDCE7EBFF, 0xF7F5EFFF, 0, 0), (0x12181FFF, 0x2B3036FF, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_CLIENT_GROUND, "client-ground", 0, 0, NO, 0, 0, 0, \
   (0xDED7C6FF, 0, 0, 0), (0x20211DFF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_CLIENT_GROUND_LINE, "client-ground-line", 1.5, 0, NO, 0, 0, 0, \
   (0, 0, 0xA69C85FF, 0), (0, 0, 0x4A4A41FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_WALL, "client-wall", 1, 0, NO, 0, 0, 0, \
   (0xF6F1E5FF, 0xEFE9DAFF, 0xC7BEABFF, 0), (0xA39C8DFF, 0x8F897BFF, 0x6A655AFF, 0), \
   (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_CAP, "client-cap", 1, 0, NO, 0, 0, 0, \
   (0xD3CCBCFF, 0, 0xADA492FF, 0), (0x6E695EFF, 0, 0x55514AFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_MOVEMENT_JOINT, "client-movement-joint", 1, 0, NO, 0, 0, 0, \
   (0xE2DACAFF, 0, 0x8A8172FF, 0), (0x7E786BFF, 0, 0x3F3B34FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SHADE, "client-shade", 0, 0, NO, 0, 0, 0, \
   (0x5A4F3A1F, 0, 0, 0), (0x00000038, 0, 0, 0), (0, 0, 0, 0)) \
S (STYLE_CLIENT_PLINTH, "client-plinth", 0, 0, NO, 0, 0, 0, \
   (0xCBC3B2FF, 0xC2B9A7FF, 0, 0), (0x6B665CFF, 0x605B52FF, 0, 0), (0xEEEEEEFF, 0, 0, 0)) \
S (STYLE_CLIENT_FRAME, "client-frame", 1, 0, NO, 0, 0, 0, \
   (0x43504DFF, 0, 0x37423FFF, 0), (0x2A3331FF, 0, 0x1F2625FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_GLASS, "client-glass", 0, 0, NO, 0, 0, 0, \
   (0xB9CBD0FF, 0x93ABB1FF, 0, 0), (0xE8C98AFF, 0xC9A361FF, 0, 0), (0xF2F2F2FF, 0, 0, 0)) \
S (STYLE_CLIENT_GLINT, "client-glint", 0, 0, NO, 0, 0, 0, \
   (0xFFFFFF38, 0, 0, 0), (0xFFFFFF1C, 0, 0, 0), (0, 0, 0, 0)) \
S (STYLE_CLIENT_REVEAL, "client-reveal", 0, 0, NO, 0, 0, 0, \
   (0xCFC6B4FF, 0xD9D1C1FF, 0, 0), (0x736D61FF, 0x7D776AFF, 0, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SILL, "client-sill", 1, 0, NO, 0, 0, 0, \
   (0xA79E8EFF, 0, 0x8C8373FF, 0), (0x57534BFF, 0, 0x45423BFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_DOOR, "client-door", 0, 0, NO, 0, 0, 0, \
   (0x73503FFF, 0x664636FF, 0, 0), (0x5B4335FF, 0x4E392DFF, 0, 0), (0xF6F6F6FF, 0, 0, 0)) \
S (STYLE_CLIENT_DOOR_LINE, "client-door-line", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x5A3D2FFF, 0), (0, 0, 0x3F2E24FF, 0), (0, 0, 0x777777FF, 0)) \
S (STYLE_CLIENT_HANDLE, "client-handle", 0, 0, NO, 0, 0, 0, \
   (0xDCD5C6FF, 0, 0, 0), (0xC9C1AFFF, 0, 0, 0), (0x000000FF, 0, 0, 0)) \
S (STYLE_CLIENT_VOID, "client-void", 0, 0, NO, 0, 0, 0, \
   (0x8B8577FF, 0xA39C8DFF, 0, 0), (0x1D1E1CFF, 0x282926FF, 0, 0), (0xE4E4E4FF, 0, 0, 0)) \
S (STYLE_CLIENT_FIGURE, "client-figure", 0, 0, NO, 0, 0, 0, \
   (0x55625FFF, 0, 0, 0), (0x1C2224FF, 0, 0, 0), (0x8A8A8AFF, 0, 0, 0)) \
S (STYLE_CLIENT_TITLE, "client-title", 0, 0, NO, 22, 0, 1, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xF2EEE5FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_TEXT, "client-text", 0, 0, NO, 11.5, 0, 0, \
   (0, 0, 0x57534BFF, 0), (0, 0, 0xBFC2C2FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_DIMENSION, "client-dimension", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x7A715EFF, 0), (0, 0, 0x8B877AFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_DIMENSION_TEXT, "client-dimension-text", 0, 0, NO, 11, 9, 0, \
   (0, 0, 0x3D3A33FF, 0), (0, 0, 0xDAD5C9FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SCALE_DARK, "client-scale-dark", 1, 0, NO, 0, 0, 0, \
   (0x3D3A33FF, 0, 0x3D3A33FF, 0), (0xC9C4B7FF, 0, 0xC9C4B7FF, 0), (0x000000FF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SCALE_LIGHT, "client-scale-light", 1, 0, NO, 0, 0, 0, \
   (0xFFFFFFFF, 0, 0x3D3A33FF, 0), (0x23241FFF, 0, 0xC9C4B7FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_CLIENT_SCALE_TEXT, "client-scale-text", 0, 0, NO, 9.5, 0, 0, \
   (0, 0, 0x4C483FFF, 0), (0, 0, 0xC9C4B7FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SHEET_LINE, "sheet-line", 1, 0, NO, 0, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SHEET_FRAME, "sheet-frame", 1.5, 0, NO, 0, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SHEET_TITLE, "sheet-title", 0, 0, NO, 15, 0, 1, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SHEET_TEXT, "sheet-text", 0, 0, NO, 10.5, 8.5, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_SHEET_CAPTION, "sheet-caption", 0, 0, NO, 8, 7, 0, \
   (0, 0, 0x57534BFF, 0), (0, 0, 0xB3ADA1FF, 0), (0, 0, 0x333333FF, 0)) \
S (STYLE_STRIP_WHOLE, "strip-whole", 0, 0, NO, 8, 7, 0, \
   (0, 0, 0x57534BFF, 0), (0, 0, 0xB3ADA1FF, 0), (0, 0, 0x555555FF, 0)) \
S (STYLE_STRIP_NUMBER, "strip-number", 0, 0, NO, 8, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STRIP_OVER, "strip-over", 0, 0, NO, 8, 0, 1, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STRIP_NAME, "strip-name", 0, 0, NO, 11, 0, 1, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xECE7DDFF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_STRIP_OPENING, "strip-opening", 1, 3, NO, 0, 0, 0, \
   (0xFFFFFFFF, 0, 0x777777FF, 0), (0x1B1C1EFF, 0, 0x77726AFF, 0), (0xFFFFFFFF, 0, 0x777777FF, 0)) \
S (STYLE_PLAN_WALL, "plan-wall", 0, 0, DIA, 0, 0, 0, \
   (0xEFE8DAFF, 0, 0, 0xD2C8B6FF), (0x3D3F43FF, 0, 0, 0x55585DFF), (0xFFFFFFFF, 0, 0, 0xB4B4B4FF)) \
S (STYLE_PLAN_OUTER, "plan-outer", 2, 0, NO, 0, 0, 0, \
   (0, 0, 0x2B2A27FF, 0), (0, 0, 0xDAD5C9FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_FACE, "plan-face", 1.25, 0, NO, 0, 0, 0, \
   (0, 0, 0x4A4740FF, 0), (0, 0, 0xB7B1A5FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_MEETING, "plan-meeting", 0, 0, NO, 0, 0, 0, \
   (0xFCFBF8FF, 0, 0, 0), (0x505359FF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_PLAN_ODD, "plan-odd", 2, 0, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_EVEN, "plan-even", 1.5, 3, NO, 0, 0, 0, \
   (0, 0, 0x1F5F6BFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_GAP, "plan-gap", 0, 0, NO, 0, 0, 0, \
   (0xF6F3ECFF, 0, 0, 0), (0x1B1C1EFF, 0, 0, 0), (0xFFFFFFFF, 0, 0, 0)) \
S (STYLE_PLAN_GLASS, "plan-glass", 1, 0, NO, 0, 0, 0, \
   (0xDDE7E9FF, 0, 0x2B2A27FF, 0), (0x263A40FF, 0, 0xA9C4CAFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_ABOVE, "plan-above", 1, 4, NO, 0, 0, 0, \
   (0, 0, 0x6F6A60FF, 0), (0, 0, 0x9B968CFF, 0), (0, 0, 0x555555FF, 0)) \
S (STYLE_PLAN_NAME, "plan-name", 0, 0, NO, 12.5, 0, 1, \
   (0xF6F3ECFF, 0, 0x2B2A27FF, 0), (0x1B1C1EFF, 0, 0xF2EEE5FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_OPENING_NAME, "plan-opening-name", 0, 0, NO, 10, 8.5, 0, \
   (0xF6F3ECFF, 0, 0x555149FF, 0), (0x1B1C1EFF, 0, 0xC4C7C2FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_WARNING, "plan-warning", 0, 0, NO, 11, 0, 1, \
   (0xB4541AFF, 0, 0xFFFFFFFF, 0), (0xF08A62FF, 0, 0x2A120AFF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_CORNER, "plan-corner", 0, 0, NO, 13, 0, 1, \
   (0, 0, 0x1A525DFF, 0), (0, 0, 0x7ACBD8FF, 0), (0, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_DIAGONAL, "plan-diagonal", 1, 5, NO, 0, 0, 0, \
   (0, 0, 0x6F6A60AA, 0), (0, 0, 0x9B968CAA, 0), (0, 0, 0x777777FF, 0)) \
S (STYLE_PLAN_DIAGONAL_TEXT, "plan-diagonal-text", 0, 0, NO, 10, 8.5, 0, \
   (0xF6F3ECFF, 0, 0x555149FF, 0), (0x1B1C1EFF, 0, 0xC4C7C2FF, 0), (0xFFFFFFFF, 0, 0x000000FF, 0)) \
S (STYLE_PLAN_FLOOR, "plan-floor", 0, 0, NO, 0, 0, 0, \
   (0xEFE8DAFF, 0, 0, 0), (0x292722FF, 0, 0, 0), (0xF2F2F2FF, 0, 0, 0))

#define ROW(style, word, width, dashes, hatching, size, small, is_bold, colours) \
  [style] = { .line_width = width, .dash = dashes, .hatch = hatching, .text_size = size, \
              .text_small = small, .bold = is_bold, COLOURS colours },
#define ROW_LIGHT(s, n, w, d, h, z, t, b, light, dark, paper) ROW (s, n, w, d, h, z, t, b, light)
#define ROW_DARK(s, n, w, d, h, z, t, b, light, dark, paper) ROW (s, n, w, d, h, z, t, b, dark)
#define ROW_PAPER(s, n, w, d, h, z, t, b, light, dark, paper) ROW (s, n, w, d, h, z, (t) *PAPER_SMALL, b, paper)

static const StyleRow rows[N_THEMES][N_STYLES] = {
  [THEME_LIGHT] = { STYLES (ROW_LIGHT) },
  [THEME_DARK] = { STYLES (ROW_DARK) },
  [THEME_PAPER] = { STYLES (ROW_PAPER) },
};
#define WORD(s, n, w, d, h, z, t, b, light, dark, paper) [s] = n,

static const char *const words[N_STYLES] = { [STYLE_NONE] = "none", STYLES (WORD) };
/* clang-format on */

const StyleRow *
theme_row (Theme theme, Style style)
{
  g_assert (theme < N_THEMES && style < N_STYLES);
  return &rows[theme][style];
}

const char *
theme_style_word (Style style)
{
  g_assert (style < N_STYLES);
  return words[style];
}
