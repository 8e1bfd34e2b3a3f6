/* test-refused.c - what is no project is refused with its line and reason, and by the schema too */
#include <string.h>

#include "any-project.h"
#include "schema.h"
#include "store/store.h"

/* Every case is this file with one piece of text put in the place of another. */
static const char good[]
    = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"                                  /* 1 */
      "<project xmlns=\"urn:halfbond:project:1\" title=\"Trial\">\n"                  /* 2 */
      "  <block id=\"b1\" name=\"B\" length=\"600\" height=\"200\"\n"                 /* 3 */
      "         thickness=\"250\" density=\"500\"/>\n"                                /* 4 */
      "  <wall id=\"w1\" name=\"Street side\" block=\"b1\"\n"                         /* 5 */
      "        length=\"8400\" height=\"2649\">\n"                                    /* 6 */
      "    <laying first-bed=\"25\" bed=\"2\" head=\"2\" min-piece=\"150\"\n"         /* 7 */
      "            min-lap=\"100\" min-rip=\"50\" kerf=\"3\" aim=\"regular\"\n"       /* 8 */
      "            start=\"left\"/>\n"                                                /* 9 */
      "    <end side=\"left\" return=\"250\" through=\"even\"/>\n"                    /* 10 */
      "    <end side=\"right\"/>\n"                                                   /* 11 */
      "    <steel bars=\"2\" diameter=\"6\" every=\"4\" under-sills=\"true\"\n"       /* 12 */
      "           over-heads=\"false\" past=\"600\" lap=\"300\"/>\n"                  /* 13 */
      "    <steel-row course=\"10\"/>\n"                                              /* 14 */
      "    <steel-row course=\"8\" omit=\"true\"/>\n"                                 /* 15 */
      "    <opening id=\"o1\" name=\"W1\" kind=\"window\" x=\"1800\"\n"               /* 16 */
      "             width=\"1200\" sill=\"1033\" height=\"1200\"/>\n"                 /* 17 */
      "    <opening id=\"o2\" name=\"D1\" kind=\"door\" x=\"5000\"\n"                 /* 18 */
      "             width=\"900\" sill=\"0\" height=\"2100\"/>\n"                     /* 19 */
      "  </wall>\n"                                                                   /* 20 */
      "  <wall id=\"w2\" block=\"b1\" length=\"5000\" height=\"2649\"/>\n"            /* 21 */
      "  <survey least=\"10\" wanted=\"25\" most=\"40\" tape=\"8000\">\n"             /* 22 */
      "    <reading point=\"A\" level=\"100\" back=\"1500\"/>\n"                      /* 23 */
      "    <reading point=\"B\" fore=\"-1480\">\n"                                    /* 24 */
      "      <at wall=\"w1\" x=\"8400\"/>\n"                                          /* 25 */
      "      <at wall=\"w2\" x=\"0\"/>\n"                                             /* 26 */
      "    </reading>\n"                                                              /* 27 */
      "    <diagonal along=\"w1\" across=\"w2\" length=\"9775.5\" first=\"8400\"/>\n" /* 28 */
      "  </survey>\n"                                                                 /* 29 */
      "</project>\n";                                                                 /* 30 */

typedef enum
{
  BY_BOTH,   /* the schema says so too */
  BY_READER, /* no schema of this kind can: references, ids, sums */
} By;

static const struct
{
  const char *name;
  const char *old, *new;
  int line;
  const char *reason;
  By by;
} cases[] = {
  /* names of elements and attributes */
  { "other-root", "<project xmlns=\"urn:halfbond:project:1\" title=\"Trial\">",
    "<house xmlns=\"urn:halfbond:project:1\"/><!--", 2,
    "the file begins with \"house\"; a project begins with <project>." },
  { "other-namespace", "urn:halfbond:project:1", "urn:example:other", 2,
    "the project is not of the namespace urn:halfbond:project:1." },
  { "no-namespace", " xmlns=\"urn:halfbond:project:1\"", "", 2,
    "the project is not of the namespace urn:halfbond:project:1." },
  { "element-unknown", "    <steel-row course=\"10\"/>", "    <roof/>", 14,
    "there is no element \"roof\" in <wall>." },
  { "element-of-no-namespace", "    <steel-row course=\"10\"/>", "    <roof xmlns=\"\"/>", 14,
    "there is no element \"roof\" in <wall>." },
  { "element-in-the-wrong-place", "  <wall id", "  <laying/><wall id", 5,
    "there is no element \"laying\" in <project>." },
  { "move-too-far", "height=\"2100\"/>", "height=\"2100\" may-move=\"10001\"/>", 19,
    "opening \"o2\": the may-move \"10001\" is not between 0 and 10000." },
  { "load-too-great", "height=\"2100\"/>", "height=\"2100\" line-load=\"1000.5\"/>", 19,
    "opening \"o2\": the line-load \"1000.5\" is not between 0 and 1000." },
  { "load-no-number", "height=\"2100\"/>", "height=\"2100\" line-load=\"much\"/>", 19,
    "opening \"o2\": the line-load \"much\" is not a number." },
  { "element-in-an-opening", "height=\"2100\"/>", "height=\"2100\"><steel/></opening>", 19,
    "there is no element \"steel\" in <opening>." },
  { "project-in-a-project", "  <wall id", "  <project/><wall id", 5,
    "there is no element \"project\" in <project>." },
  { "attribute-unknown", " min-rip", " colour=\"red\" min-rip", 8,
    "laying: there is no attribute \"colour\" here." },
  { "attribute-unknown-on-a-later-line", "thickness=\"250\"", "colour=\"red\" thickness=\"250\"", 4,
    "block \"b1\": there is no attribute \"colour\" here." },
  { "attribute-behind-namespaces",
    " title=", "\n xmlns:v='urn:v'\n xmlns:w\t=\n\"urn:w\"\n v:a='\n\"=x'\n colour=", 8,
    "project: there is no attribute \"colour\" here." },
  { "attribute-with-our-prefix", " title=", " xmlns:h=\"urn:halfbond:project:1\" h:title=", 2,
    "there is no attribute \"title\" here." },
  { "attribute-id-on-laying", "<laying ", "<laying id=\"l1\" ", 7,
    "laying \"l1\": there is no attribute \"id\" here." },
  { "text-in-project", "  <wall id", "  some\n  words <wall id", 5,
    "there is text in <project>, where none belongs: \"some" },
  { "text-in-wall", "    <steel-row course=\"10\"/>", "    x", 14,
    "there is text in <wall>, where none belongs: \"x\"." },
  { "text-in-opening", "height=\"2100\"/>", "height=\"2100\">W</opening>", 19,
    "there is text in <opening>" },
  { "text-as-cdata", "    <steel-row course=\"10\"/>", "<![CDATA[x]]>", 14,
    "there is text in <wall>" },
  { "second-laying", "    <steel-row course=\"10\"/>", "    <laying/>", 14,
    "there is a second <laying> in the same wall." },
  { "second-steel", "    <steel-row course=\"10\"/>", "    <steel/>", 14,
    "there is a second <steel> in the same wall." },
  { "second-left-end", "<end side=\"right\"/>", "<end side=\"left\"/>", 11,
    "the wall has a second <end> on the side \"left\"." },
  /* the survey */
  { "second-survey", "  <survey", "  <survey/>\n  <survey", 23, "there is a second <survey>." },
  { "place-outside-a-reading", "    <diagonal", "    <at wall=\"w1\" x=\"0\"/><diagonal", 28,
    "there is no element \"at\" in <survey>." },
  { "second-work", "  <survey", "  <work gang=\"3\"/>\n  <work/>\n  <survey", 23,
    "there is a second <work>." },
  { "work-in-a-wall", "    <steel-row course=\"10\"/>", "    <work/>", 14,
    "there is no element \"work\" in <wall>." },
  { "work-of-nobody", "  <survey", "  <work gang=\"0\"/>\n  <survey", 22,
    "work: the gang \"0\" is not between 1 and 1000." },
  { "work-of-no-hours", "  <survey", "  <work hours-a-day=\"0\"/>\n  <survey", 22,
    "work: the hours-a-day \"0\" is not between 0.000001 and 24." },
  { "work-in-words", "  <survey", "  <work minutes-a-cut=\"two\"/>\n  <survey", 22,
    "work: the minutes-a-cut \"two\" is not a number." },
  { "work-that-does-not-rise", "  <survey", "  <work rise=\"0.5\"/>\n  <survey", 22,
    "work: the rise \"0.5\" is not between 1 and 1000000." },
  { "survey-in-a-wall", "    <steel-row course=\"10\"/>", "    <survey/>", 14,
    "there is no element \"survey\" in <wall>." },
  { "reading-no-number", "back=\"1500\"", "back=\"1,500\"", 23,
    "reading: the back \"1,500\" is not a number of millimetres." },
  { "reading-too-long", "fore=\"-1480\"", "fore=\"-20000.01\"", 24,
    "reading: the fore \"-20000.01\" is not between -20000 and 20000." },
  { "level-too-high", "level=\"100\"", "level=\"1000000.5\"", 23, "level \"1000000.5\" is not" },
  { "place-without-a-wall", "<at wall=\"w2\" x", "<at x", 26, "at: the wall is missing." },
  { "place-without-x", "wall=\"w1\" x=\"8400\"", "wall=\"w1\"", 25, "at: the x is missing." },
  { "place-before-the-wall", "wall=\"w1\" x=\"8400\"", "wall=\"w1\" x=\"-1\"", 25,
    "not between 0 and" },
  { "place-on-no-wall", "<at wall=\"w2\"", "<at wall=\"w3\"", 26,
    "survey: there is no wall \"w3\".", BY_READER },
  { "diagonal-of-no-wall", "across=\"w2\"", "across=\"b1\"", 28, "survey: there is no wall \"b1\".",
    BY_READER },
  { "diagonal-of-one-wall", "across=\"w2\"", "across=\"w1\"", 22,
    "survey: Diagonal 1: A diagonal goes across a corner of two walls, not of one.", BY_READER },
  { "diagonal-without-length", " length=\"9775.5\"", "", 28, "diagonal: the length is missing." },
  { "diagonal-of-nothing", " length=\"9775.5\"", " length=\"0\"", 28, "not between 1 and 1000000" },
  { "bed-upside-down", "wanted=\"25\"", "wanted=\"45\"", 22,
    "survey: The wanted levelling bed, 45 mm, is not between the least, 10 mm, and the thickest",
    BY_READER },
  { "survey-bed-too-thick", "most=\"40\"", "most=\"201\"", 22, "not between 0 and 200" },
  { "tape-too-short", "tape=\"8000\"", "tape=\"499\"", 22, "not between 500 and 100000" },
  /* what is left out */
  { "block-without-id", "block id=\"b1\"", "block", 3, "block: the id is missing." },
  { "block-without-length", "length=\"600\"", "", 3, "block \"b1\": the length is missing." },
  { "block-without-density", "density=\"500\"", "", 3, "block \"b1\": the density is missing." },
  { "wall-without-id", "wall id=\"w1\"", "wall", 5, "wall: the id is missing." },
  { "wall-without-block", "block=\"b1\"", "", 5, "wall \"w1\": the block is missing." },
  { "wall-without-height", "height=\"2649\"", "", 5, "wall \"w1\": the height is missing." },
  { "end-without-side", "<end side=\"right\"/>", "<end/>", 11, "end: the side is missing." },
  { "return-without-through", " through=\"even\"", "", 10,
    "end: return and through go together; one is missing." },
  { "through-without-return", " return=\"250\"", "", 10,
    "end: return and through go together; one is missing." },
  { "steel-row-without-course", "course=\"8\"", "", 15, "steel-row: the course is missing." },
  { "opening-without-kind", "kind=\"door\"", "", 18, "opening \"o2\": the kind is missing." },
  { "opening-without-sill", "sill=\"0\"", "", 18, "opening \"o2\": the sill is missing." },
  /* ids */
  { "id-twice", "id=\"o2\"", "id=\"o1\"", 18, "the id \"o1\" is used twice.", BY_READER },
  { "id-of-a-block-on-a-wall", "id=\"w1\"", "id=\"b1\"", 5, "the id \"b1\" is used twice.",
    BY_READER },
  { "id-twice-but-for-space", "id=\"o2\"", "id=\" o1 \"", 18, "the id \"o1\" is used twice.",
    BY_READER },
  { "id-empty", "id=\"o2\"", "id=\"\"", 18, "the id \"\" is not a name" },
  { "id-begins-with-a-digit", "id=\"o2\"", "id=\"2\"", 18, "the id \"2\" is not a name" },
  { "id-with-a-colon", "id=\"o2\"", "id=\"o:2\"", 18, "the id \"o:2\" is not a name" },
  { "id-with-a-space", "id=\"o2\"", "id=\"o 2\"", 18, "the id \"o 2\" is not a name" },
  { "no-such-block", "block=\"b1\"", "block=\"b9\"", 5, "wall \"w1\": there is no block \"b9\".",
    BY_READER },
  { "block-is-a-wall", "block=\"b1\"", "block=\"w1\"", 5, "wall \"w1\": there is no block \"w1\".",
    BY_READER },
  /* numbers */
  { "no-number", "length=\"8400\"", "length=\"abc\"", 6,
    "wall \"w1\": the length \"abc\" is not a number of millimetres." },
  { "number-empty", "length=\"8400\"", "length=\"\"", 6, "the length \"\" is not a number" },
  { "number-with-exponent", "length=\"8400\"", "length=\"84e2\"", 6, "\"84e2\" is not a number" },
  { "number-with-comma", "length=\"8400\"", "length=\"8400,5\"", 6, "\"8400,5\" is not a number" },
  { "number-with-unit", "length=\"8400\"", "length=\"8400mm\"", 6, "\"8400mm\" is not a number" },
  { "number-in-hexadecimal", "length=\"8400\"", "length=\"0x20d0\"", 6,
    "\"0x20d0\" is not a number" },
  { "number-infinite", "length=\"8400\"", "length=\"INF\"", 6, "\"INF\" is not a number" },
  { "number-in-other-digits", "length=\"8400\"", "length=\"٨٤٠٠\"", 6, "is not a number" },
  { "number-with-two-signs", "x=\"5000\"", "x=\"+-5000\"", 18, "\"+-5000\" is not a number" },
  { "number-a-point", "x=\"5000\"", "x=\".\"", 18, "\".\" is not a number" },
  { "number-endless", "x=\"5000\"", "x=\"0000000000000000000005000\"", 18, "is not a number" },
  { "unit-of-no-length", "length=\"600\"", "length=\"0\"", 3,
    "block \"b1\": the length \"0\" is not between 20 and 10000." },
  { "unit-just-too-short", "length=\"600\"", "length=\"19.999\"", 3,
    "\"19.999\" is not between 20 and 10000." },
  { "unit-too-high", "height=\"200\"", "height=\"10000.01\"", 3,
    "\"10000.01\" is not between 20 and 10000." },
  { "unit-negative", "thickness=\"250\"", "thickness=\"-250\"", 4, "is not between 20 and 10000." },
  { "density-nothing", "density=\"500\"", "density=\"0\"", 4,
    "block \"b1\": the density \"0\" is not between 0.000001 and 20000." },
  { "density-too-great", "density=\"500\"", "density=\"20000.1\"", 4, "is not between" },
  { "strength-nothing", "density=\"500\"", "density=\"500\" strength=\"0\"", 4,
    "block \"b1\": the strength \"0\" is not between 0.001 and 100." },
  { "density-no-number", "density=\"500\"", "density=\"light\"", 4,
    "\"light\" is not a number of kilograms in a cubic metre." },
  { "wall-too-short", "length=\"8400\"", "length=\"49\"", 6, "is not between 50 and 1000000." },
  { "wall-too-long", "length=\"8400\"", "length=\"1000000.1\"", 6,
    "is not between 50 and 1000000." },
  { "wall-beyond-all-numbers", "length=\"8400\"", "length=\"99999999999999999999999\"", 6,
    "is not between 50 and 1000000." },
  { "wall-of-too-many-blocks", "length=\"8400\" height=\"2649\"",
    "length=\"900000\" height=\"900000\"", 5, "wall \"w1\": The wall would take about", BY_READER },
  { "first-bed-too-thick", "first-bed=\"25\"", "first-bed=\"200.1\"", 7,
    "laying: the first-bed \"200.1\" is not between 0 and 200." },
  { "bed-too-thick", " bed=\"2\"", " bed=\"20.5\"", 7,
    "the bed \"20.5\" is not between 0 and 20." },
  { "head-negative", "head=\"2\"", "head=\"-0.1\"", 7,
    "the head \"-0.1\" is not between 0 and 20." },
  { "min-piece-nothing", "min-piece=\"150\"", "min-piece=\"0\"", 7,
    "the min-piece \"0\" is not between 0.003125 and 10000." },
  { "min-piece-too-long", "min-piece=\"150\"", "min-piece=\"10001\"", 7,
    "the min-piece \"10001\" is not between 0.003125 and 10000." },
  { "min-lap-longer-than-the-unit", "min-lap=\"100\"", "min-lap=\"601\"", 5,
    "wall \"w1\": The least lap is 601 mm; it must be from 0 to 600 mm.", BY_READER },
  { "min-lap-negative", "min-lap=\"100\"", "min-lap=\"-1\"", 8, "is not between 0 and 10000." },
  { "min-rip-nothing", "min-rip=\"50\"", "min-rip=\"0\"", 8, "is not between 0.003125 and 10000." },
  { "kerf-too-wide", "kerf=\"3\"", "kerf=\"21\"", 8, "the kerf \"21\" is not between 0 and 20." },
  { "aim-unknown", "aim=\"regular\"", "aim=\"pretty\"", 8,
    "laying: the aim \"pretty\" is none of: regular, fewest-cuts, least-waste." },
  { "aim-in-capitals", "aim=\"regular\"", "aim=\"Regular\"", 8, "the aim \"Regular\" is none of" },
  { "start-unknown", "start=\"left\"", "start=\"middle\"", 9,
    "the start \"middle\" is none of: left, right." },
  { "side-unknown", "side=\"right\"", "side=\"top\"", 11,
    "end: the side \"top\" is none of: left, right." },
  { "through-unknown", "through=\"even\"", "through=\"both\"", 10,
    "end: the through \"both\" is none of: odd, even, all." },
  { "return-negative", "return=\"250\"", "return=\"-250\"", 10, "is not between 0 and 10000." },
  { "return-longer-than-the-wall", "return=\"250\"", "return=\"8400\"", 5,
    "wall \"w1\": ", BY_READER },
  { "tee-through-unknown", "    <steel-row course=\"10\"/>",
    "    <tee x=\"2000\" return=\"115\" through=\"some\"/>", 14,
    "tee: the through \"some\" is none of: odd, even, all." },
  { "up-to-without-return", "    <end side=\"right\"/>", "    <end side=\"right\" up-to=\"2000\"/>",
    11, "end: there is no up-to where there is no return." },
  /* what stands */
  { "second-built", "    <steel-row course=\"10\"/>", "    <built/>\n    <built/>", 15,
    "there is a second <built> in the same wall." },
  { "built-outside", "  <survey", "  <built/>\n  <survey", 22,
    "there is no element \"built\" in <project>." },
  { "laid-outside", "    <steel-row course=\"10\"/>", "    <laid course=\"1\"/>", 14,
    "there is no element \"laid\" in <wall>." },
  { "fewer-than-no-courses", "    <steel-row course=\"10\"/>", "    <built courses=\"-1\"/>", 14,
    "built: the courses \"-1\" is not a whole number." },
  { "out-of-plumb-by-far", "    <steel-row course=\"10\"/>", "    <built plumb=\"-1000.5\"/>", 14,
    "built: the plumb \"-1000.5\" is not between -1000 and 1000." },
  { "course-0-stands", "    <steel-row course=\"10\"/>",
    "    <built>\n<laid course=\"0\"/></built>", 15,
    "laid: the course \"0\" is not between 1 and 10000." },
  { "perpend-in-words", "    <steel-row course=\"10\"/>",
    "    <built courses=\"1\">\n<laid course=\"1\" perpends=\"600 many 1802\"/></built>", 15,
    "laid: the perpends \"many\" is not a number of millimetres." },
  { "perpend-before-the-wall", "    <steel-row course=\"10\"/>",
    "    <built courses=\"1\">\n<laid course=\"1\" perpends=\"0 1802\"/></built>", 15,
    "laid: the perpends \"0\" is not between 0.003125 and 1000000." },
  { "perpend-without-height", "    <steel-row course=\"10\"/>",
    "    <built courses=\"1\">\n<laid course=\"1\" perpends-at=\"600 100 900\"/></built>", 15,
    "laid: perpends-at has a place without a height." },
  { "laid-twice", "    <steel-row course=\"10\"/>",
    "    <built courses=\"1\">\n<laid course=\"1\"/>\n<laid course=\"1\"/></built>", 16,
    "the wall has a second <laid> of course 1.", BY_READER },
  { "not-laid", "    <steel-row course=\"10\"/>", "    <built courses=\"1\"/>", 5,
    "wall \"w1\": It stands up to course 1; how course 1 was laid is not said, or said twice.",
    BY_READER },
  { "lower-than-the-one-below", "    <steel-row course=\"10\"/>",
    "    <built courses=\"2\"><laid course=\"1\" top=\"230\"/><laid course=\"2\" top=\"429\"/>"
    "</built>",
    5,
    "wall \"w1\": Course 2 cannot end at 429 mm: course 1 ends at 230 mm, and a block for each "
    "course above it reaches 430 mm at least.",
    BY_READER },
  { "second-tolerance", "  <survey",
    "  <tolerance of=\"bed\" limit=\"5\"/>\n  <tolerance of=\"bed\" limit=\"6\"/>\n  <survey", 23,
    "there is a second tolerance \"bed\".", BY_READER },
  { "tolerance-of-what", "  <survey", "  <tolerance of=\"colour\" limit=\"5\"/>\n  <survey", 22,
    "tolerance: the of \"colour\" is none of: length, top, level, bed, opening, plumb, bow, "
    "bow-metre." },
  { "tolerance-too-wide", "  <survey", "  <tolerance of=\"top\" limit=\"201\"/>\n  <survey", 22,
    "tolerance: the limit \"201\" is not between 0 and 200." },
  { "planned-width-of-nothing", "sill=\"1033\"", "sill=\"1033\" planned-width=\"9\"", 17,
    "opening \"o1\": the planned-width \"9\" is not between 10 and 1000000." },
  { "second-cap", "    <steel-row course=\"10\"/>",
    "    <cap height=\"100\"/><cap height=\"100\"/>", 14,
    "there is a second <cap> in the same wall." },
  { "cap-too-thin", "    <steel-row course=\"10\"/>", "    <cap height=\"9\"/>", 14,
    "cap: the height \"9\" is not between 10 and 1000." },
  { "top-without-below", "    <steel-row course=\"10\"/>", "    <top x=\"100\"/>", 14,
    "top: the below is missing." },
  { "ties-unknown", "through=\"even\"/>", "through=\"all\" ties=\"rope\"/>", 10,
    "end: the ties \"rope\" is none of: strip, mesh, angle." },
  { "ties-in-no-course", "through=\"even\"/>", "through=\"all\" ties=\"mesh\" ties-every=\"0\"/>",
    10, "end: the ties-every \"0\" is not between 1 and 1000." },
  { "ties-too-many-abreast", "through=\"even\"/>",
    "through=\"all\" ties=\"mesh\" ties-abreast=\"11\"/>", 10,
    "end: the ties-abreast \"11\" is not between 1 and 10." },
  { "ties-of-no-kind", "through=\"even\"/>", "through=\"all\" ties-every=\"2\"/>", 10,
    "end: ties-every and ties-abreast go with ties, which is missing." },
  { "ties-of-a-free-end", "<end side=\"right\"/>", "<end side=\"right\" ties=\"strip\"/>", 11,
    "end: ties go with return and through, which are missing." },
  { "ties-of-no-kind-at-a-tee", "    <steel-row course=\"10\"/>",
    "    <tee x=\"2000\" return=\"115\" through=\"all\" ties-abreast=\"2\"/>", 14,
    "tee: ties-every and ties-abreast go with ties, which is missing." },
  { "tee-of-no-thickness", "    <steel-row course=\"10\"/>",
    "    <tee x=\"2000\" return=\"0\" through=\"odd\"/>", 14,
    "tee: the return \"0\" is not between" },
  { "tee-beyond-the-wall", "    <steel-row course=\"10\"/>",
    "    <tee x=\"8350\" return=\"115\" through=\"all\"/>", 5,
    "The wall that meets it at 8350 mm stands beyond its right end.", BY_READER },
  { "place-half", "length=\"8400\" height=\"2649\"", "length=\"8400\" height=\"2649\" plan-x=\"0\"",
    5, "wall: plan-x, plan-y and runs go together; one is missing." },
  { "runs-unknown", "length=\"8400\" height=\"2649\"",
    "length=\"8400\" height=\"2649\" plan-x=\"0\" plan-y=\"0\" runs=\"up\"", 6,
    "wall \"w1\": the runs \"up\" is none of: east, north, west, south." },
  { "movement-joint-too-narrow", "    <steel-row course=\"10\"/>",
    "    <movement-joint x=\"2000\" width=\"4\"/>", 14,
    "movement-joint: the width \"4\" is not between 5 and 50." },
  { "movement-joint-at-the-end", "    <steel-row course=\"10\"/>", "    <movement-joint x=\"0\"/>",
    14, "movement-joint: the x \"0\" is not between" },
  { "movement-joint-beyond-the-wall", "    <steel-row course=\"10\"/>",
    "    <movement-joint x=\"8390\"/>", 5,
    "The movement joint at 8390 mm leaves nothing of the wall on its right.", BY_READER },
  { "movement-joint-in-the-corner", "    <steel-row course=\"10\"/>",
    "    <movement-joint x=\"100\"/>", 5,
    "The movement joint at 100 mm lies within the other wall of the corner.", BY_READER },
  { "movement-joints-side-by-side", "    <steel-row course=\"10\"/>",
    "    <movement-joint x=\"2010\"/><movement-joint x=\"2000\"/>", 5,
    "The movement joint at 2010 mm leaves nothing of the wall before it.", BY_READER },
  { "bars-none", "bars=\"2\"", "bars=\"0\"", 12, "steel: the bars \"0\" is not between 1 and 20." },
  { "bars-too-many", "bars=\"2\"", "bars=\"21\"", 12, "is not between 1 and 20." },
  { "bars-not-whole", "bars=\"2\"", "bars=\"2.0\"", 12, "the bars \"2.0\" is not a whole number." },
  { "bars-with-sign", "bars=\"2\"", "bars=\"+2\"", 12, "the bars \"+2\" is not a whole number." },
  { "bars-empty", "bars=\"2\"", "bars=\"\"", 12, "the bars \"\" is not a whole number." },
  { "diameter-nothing", "diameter=\"6\"", "diameter=\"0\"", 12, "is not between 0.003125 and 50." },
  { "diameter-too-great", "diameter=\"6\"", "diameter=\"50.1\"", 12, "is not between" },
  { "every-too-many", "every=\"4\"", "every=\"10001\"", 12, "is not between 0 and 10000." },
  { "every-negative", "every=\"4\"", "every=\"-4\"", 12,
    "the every \"-4\" is not a whole number." },
  { "under-sills-no-word", "under-sills=\"true\"", "under-sills=\"yes\"", 12,
    "steel: the under-sills \"yes\" is none of: true, false." },
  { "over-heads-a-digit", "over-heads=\"false\"", "over-heads=\"0\"", 13,
    "the over-heads \"0\" is none of: true, false." },
  { "past-negative", "past=\"600\"", "past=\"-1\"", 13, "is not between 0 and 1000000." },
  { "lap-too-long", " lap=\"300\"", " lap=\"3000.5\"", 13, "is not between 0 and 3000." },
  { "course-none", "course=\"8\"", "course=\"0\"", 15,
    "steel-row: the course \"0\" is not between 1 and 10000." },
  { "course-too-high", "course=\"8\"", "course=\"10001\"", 15, "is not between 1 and 10000." },
  { "course-huge", "course=\"8\"", "course=\"4294967297\"", 15, "is not between 1 and 10000." },
  { "course-twice", "course=\"8\"", "course=\"10\"", 15,
    "the wall has a second steel row on course 10.", BY_READER },
  { "omit-no-word", "omit=\"true\"", "omit=\"TRUE\"", 15, "the omit \"TRUE\" is none of" },
  { "kind-unknown", "kind=\"door\"", "kind=\"hatch\"", 18,
    "opening \"o2\": the kind \"hatch\" is none of: window, door, void." },
  { "x-negative", "x=\"5000\"", "x=\"-0.5\"", 18, "the x \"-0.5\" is not between 0 and 1000000." },
  { "width-too-small", "width=\"900\"", "width=\"9.9\"", 19,
    "the width \"9.9\" is not between 10 and 1000000." },
  { "opening-too-low", "height=\"2100\"", "height=\"0\"", 19, "is not between 10 and 1000000." },
  { "sill-negative", "sill=\"1033\"", "sill=\"-1\"", 17, "is not between 0 and 1000000." },
  /* pins */
  /* rules */
  { "rule-unknown", "start=\"left\"/>", "start=\"left\"><rule kind=\"x\" keep=\"must\"/></laying>",
    9, "rule: the kind \"x\" is none of: bearing, jamb-line" },
  { "rule-without-keep", "start=\"left\"/>", "start=\"left\"><rule kind=\"bearing\"/></laying>", 9,
    "rule: the keep is missing." },
  { "rule-twice", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"lap\" keep=\"prefer\"/>\n<rule kind=\"lap\" "
    "keep=\"prefer\"/></laying>",
    10, "the wall has a second rule \"lap\".", BY_READER },
  { "rule-lap-must", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"lap\" keep=\"must\"/></laying>", 9,
    "rule: a \"lap\" can only be preferred." },
  { "rule-with-no-number", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"whole-ends\" keep=\"must\" length=\"100\"/></laying>", 9,
    "rule: there is no length where the kind is \"whole-ends\"." },
  { "rule-with-the-wrong-number", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"bearing\" keep=\"must\" count=\"2\"/></laying>", 9,
    "rule: there is no count where the kind is \"bearing\"." },
  { "rule-count-too-high", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"lap\" keep=\"prefer\" count=\"5\"/></laying>", 9,
    "rule: the count of a \"lap\" is from 2 to 4." },
  { "rule-length-nothing", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"bearing\" keep=\"must\" length=\"0\"/></laying>", 9,
    "rule: the length of a \"bearing\" is from " },
  { "rule-length-too-long", "start=\"left\"/>",
    "start=\"left\"><rule kind=\"bearing\" keep=\"must\" length=\"10001\"/></laying>", 9,
    "rule: the length \"10001\" is not between 0 and 10000." },
  { "rule-in-a-wall", "    <steel-row course=\"10\"/>", "    <rule kind=\"lap\" keep=\"prefer\"/>",
    14, "there is no element \"rule\" in <wall>." },
  { "pin-without-course", "    <steel-row course=\"10\"/>", "    <pin x=\"600\"/>", 14,
    "pin: the course is missing." },
  { "pin-without-x", "    <steel-row course=\"10\"/>", "    <pin course=\"2\"/>", 14,
    "pin: the x is missing." },
  { "pin-on-course-none", "    <steel-row course=\"10\"/>", "    <pin course=\"0\" x=\"0\"/>", 14,
    "is not between 1 and 10000." },
  { "pin-of-no-length", "    <steel-row course=\"10\"/>",
    "    <pin course=\"2\" x=\"0\" length=\"0\"/>", 14, "is not between 0.003125 and 10000." },
  { "pin-too-long", "    <steel-row course=\"10\"/>",
    "    <pin course=\"2\" x=\"0\" length=\"10000.1\"/>", 14, "is not between" },
  { "pin-before-the-wall", "    <steel-row course=\"10\"/>", "    <pin course=\"2\" x=\"-1\"/>", 14,
    "is not between 0 and 1000000." },
  { "pin-with-something-in-it", "    <steel-row course=\"10\"/>",
    "    <pin course=\"2\" x=\"0\"><pin course=\"3\" x=\"0\"/></pin>", 14,
    "there is no element \"pin\" in <pin>." },
  { "pin-twice", "    <steel-row course=\"10\"/>",
    "    <pin course=\"2\" x=\"600\"/><pin course=\"3\" x=\"600\"/><pin course=\"2\" x=\"600.0\" "
    "length=\"9\"/>",
    14, "the wall has a second pin on course 2 at 600 mm.", BY_READER },
  /* openings and their wall */
  { "opening-leaves-on-the-right", "x=\"5000\"", "x=\"7620\"", 18,
    "wall \"w1\": Opening D1 leaves the wall by 120 mm on the right.", BY_READER },
  { "opening-leaves-at-the-top", "sill=\"1033\"", "sill=\"1500\"", 16,
    "wall \"w1\": Opening W1 leaves the wall by 51 mm at the top.", BY_READER },
  { "openings-overlap", "x=\"5000\"", "x=\"2999.9\"", 18,
    "wall \"w1\": Openings W1 and D1 overlap.", BY_READER },
  /* not XML as it should be */
  { "tag-not-closed", "  </survey>\n", "", 29, "not well-formed" },
  { "attribute-twice", "bars=\"2\"", "bars=\"2\" bars=\"3\"", 13, "not well-formed" },
  { "prefix-unknown", "    <steel-row course=\"10\"/>", "    <v:x/>", 14, "not well-formed" },
  { "entity-unknown", "title=\"Trial\"", "title=\"&trial;\"", 2, "not well-formed" },
  { "entity-unknown-in-text", "    <steel-row course=\"10\"/>", "&trial;", 14, "" },
  { "two-roots", "</project>\n", "</project>\n<project/>\n", 31, "not well-formed" },
  { "other-encoding", "encoding=\"UTF-8\"", "encoding=\"ISO-8859-1\"", 1,
    "it says that it is written in another encoding than UTF-8.", BY_READER },
  { "other-version", "version=\"1.0\"", "version=\"1.1\"", 1,
    "it is written in another version of XML than 1.0.", BY_READER },
  { "control-character", "title=\"Trial\"", "title=\"T&#1;l\"", 2, "not well-formed" },
  { "character-beyond-unicode", "title=\"Trial\"", "title=\"&#x110000;\"", 2, "not well-formed" },
};

static char *
exchange (const char *text, const char *old, const char *new)
{
  const char *at = strstr (text, old);
  g_assert_nonnull (at);
  g_autofree char *before = g_strndup (text, (gsize) (at - text));
  return g_strconcat (before, new, at + strlen (old), NULL);
}

/* One sentence on one line: the place, then the reason. */
static void
assert_refused (const char *text, gsize n, int line, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = store_read_bytes (text, n, "a.halfbond", &error);
  g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
  g_assert_null (project);
  g_autofree char *place = g_strdup_printf ("a.halfbond:%d: ", line);
  if (!g_str_has_prefix (error->message, place) || strstr (error->message, reason) == NULL)
    g_test_message ("wanted \"%s... %s\", got \"%s\"", place, reason, error->message);
  g_assert_true (g_str_has_prefix (error->message, place));
  g_assert_nonnull (strstr (error->message, reason));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_true (g_str_has_suffix (error->message, "."));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

static void
test_case (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autofree char *text = exchange (good, cases[i].old, cases[i].new);
  assert_refused (text, strlen (text), cases[i].line, cases[i].reason);
  g_autofree char *fault = schema_fault (text, strlen (text));
  if (cases[i].by == BY_BOTH)
    g_assert_nonnull (fault);
  else
    g_assert_cmpstr (fault, ==, NULL);
}

/* The file that all cases begin with has nothing wrong with it. */
static void
test_good_is_good (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = store_read_bytes (good, strlen (good), "a.halfbond", &error);
  g_assert_no_error (error);
  g_assert_nonnull (project);
  g_autofree char *fault = schema_fault (good, strlen (good));
  g_assert_cmpstr (fault, ==, NULL);
}

/* What is on the border of being refused, but is not: both agree here too. */
static const struct
{
  const char *old, *new;
} allowed[] = {
  { "thickness=\"250\"", "thickness=\"20\"" },
  { "length=\"600\"", "length=\"+600.\"" },
  { "length=\"600\"", "length=\"\n600\t\"" },
  { "length=\"8400\"", "length=\"8400.00000000000000000\"" },
  { "height=\"2649\"", "height=\"2301\"" },
  { "first-bed=\"25\"", "first-bed=\"200\"" },
  { "first-bed=\"25\"", "first-bed=\"-0\"" },
  { " bed=\"2\"", " bed=\"20\"" },
  { "min-piece=\"150\"", "min-piece=\"0.003125\"" },
  { "min-rip=\"50\"", "min-rip=\"200\"" },
  { "kerf=\"3\"", "kerf=\".5\"" },
  { "aim=\"regular\"", "aim=\" least-waste \"" },
  { "return=\"250\"", "return=\"0\"" },
  { "bars=\"2\"", "bars=\" 020 \"" },
  { "every=\"4\"", "every=\"10000\"" },
  { "under-sills=\"true\"", "under-sills=\" false\"" },
  { "lap=\"300\"", "lap=\"3000\"" },
  { "course=\"8\"", "course=\"10000\"" },
  { "x=\"5000\"", "x=\"3000\"" },
  { "x=\"5000\"", "x=\"7500\"" },
  { "width=\"900\"", "width=\"10\"" },
  { "id=\"o2\"", "id=\"_Ö-2.·\"" },
  { "name=\"D1\"", "name=\" \"" },
  { "title=\"Trial\"", "title=\"&lt;&amp;&quot;&apos;&gt;&#10;\"" },
  { "<steel-row course=\"10\"/>", "<x:y xmlns:x=\"urn:x\" a=\"1\">t<steel/><z xmlns=\"\"/></x:y>" },
  { "<steel-row course=\"10\"/>", "<pin course=\"10000\" x=\"1000000\" length=\"10000\"/>" },
  { "<steel-row course=\"10\"/>", "<pin course=\" 1 \" x=\"0\" length=\"0.003125\"/>" },
  { "<end side=\"right\"/>", "<end side=\"right\" xml:lang=\"de\"/>" },
  { "through=\"even\"/>",
    "through=\"all\" ties=\"strip\" ties-every=\"1000\" ties-abreast=\"10\"/>" },
  { "through=\"even\"/>", "through=\"all\" ties=\"angle\"/>" },
  { "<at wall=\"w2\" x=\"0\"/>", "" },
  { "<at wall=\"w2\" x=\"0\"/>", "<at wall=\"w2\" x=\"1000000\"/><x:y xmlns:x=\"urn:x\"/>" },
  { "point=\"A\" level=\"100\" back=\"1500\"", "" },
  { "back=\"1500\"", "back=\"-20000\" inter=\"+.5\" fore=\"20000\"" },
  { "level=\"100\"", "level=\"-1000000\"" },
  { "<survey least=\"10\" wanted=\"25\" most=\"40\"", "<survey" },
  { " tape=\"8000\"", " tape=\"100000\" tolerance=\"0\" square=\"100\" first-course=\"-3.5\"" },
  { "<project", "<!-- a -->\n<?b c?>\n<project" },
};

static void
test_allowed (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (allowed); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = exchange (good, allowed[i].old, allowed[i].new);
      g_test_message ("%s", allowed[i].new);
      g_autoptr (Project) project = store_read_bytes (text, strlen (text), "a.halfbond", &error);
      g_assert_no_error (error);
      g_assert_nonnull (project);
      g_autofree char *fault = schema_fault (text, strlen (text));
      g_assert_cmpstr (fault, ==, NULL);
    }
}

/* `n` copies of a format with one number in it, within the good file's head and foot. */
static char *
many (guint n, const char *head, const char *item, const char *foot)
{
  GString *text = g_string_new ("<project xmlns=\"urn:halfbond:project:1\">\n");
  g_string_append (text, head);
  for (guint i = 0; i < n; i++)
    {
      g_auto (GStrv) parts = g_strsplit (item, "#", -1);
      for (guint j = 0; parts[j] != NULL; j++)
        {
          if (j > 0)
            g_string_append_printf (text, "%u", i + 1);
          g_string_append (text, parts[j]);
        }
    }
  g_string_append (text, foot);
  return g_string_free (g_string_append (text, "</project>\n"), FALSE);
}

#define A_BLOCK                                                                                    \
  "<block id=\"b#\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500\"/>\n"
#define ONE_BLOCK                                                                                  \
  "<block id=\"b\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500\"/>\n"

static const struct
{
  const char *name, *head, *item, *foot;
  guint most;
  int line; /* of the first that is too many */
  const char *reason;
} counts[] = {
  { "blocks", "", A_BLOCK, "", PROJECT_MAX_BLOCKS, PROJECT_MAX_BLOCKS + 2,
    "there are more than 1000 blocks." },
  { "walls", ONE_BLOCK, "<wall id=\"w#\" block=\"b\" length=\"3000\" height=\"2000\"/>\n", "",
    PROJECT_MAX_WALLS, PROJECT_MAX_WALLS + 3, "there are more than 10000 walls." },
  { "openings", ONE_BLOCK "<wall id=\"w\" block=\"b\" length=\"30000\" height=\"2000\">\n",
    "<opening id=\"o#\" kind=\"void\" x=\"#0\" width=\"10\" sill=\"0\" height=\"10\"/>\n",
    "</wall>", WALL_MAX_OPENINGS, WALL_MAX_OPENINGS + 4, "the wall has more than 1000 openings." },
  { "attributes", "", "<v:a xmlns:v=\"urn:v\"/>", "", 1000, 0, "" },
  { "readings", "<survey>\n", "<reading/>\n", "</survey>", SURVEY_MAX_READINGS,
    SURVEY_MAX_READINGS + 3, "there are more than 5000 readings." },
  { "places",
    ONE_BLOCK "<wall id=\"w\" block=\"b\" length=\"3000\" height=\"2000\"/>\n<survey><reading>\n",
    "<at wall=\"w\" x=\"#\"/>\n", "</reading></survey>", SURVEY_MAX_PLACES, SURVEY_MAX_PLACES + 5,
    "the reading has more than 20 places." },
  { "diagonals",
    ONE_BLOCK "<wall id=\"w\" block=\"b\" length=\"3000\" height=\"2000\"/>\n"
              "<wall id=\"v\" block=\"b\" length=\"3000\" height=\"2000\"/>\n<survey>\n",
    "<diagonal along=\"w\" across=\"v\" length=\"#\"/>\n", "</survey>", SURVEY_MAX_DIAGONALS,
    SURVEY_MAX_DIAGONALS + 6, "there are more than 1000 diagonals." },
};

static void
test_counts (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  g_autofree char *just = many (counts[i].most, counts[i].head, counts[i].item, counts[i].foot);
  g_autoptr (Project) project = store_read_bytes (just, strlen (just), "a.halfbond", &error);
  g_assert_no_error (error);
  g_assert_nonnull (project);
  if (counts[i].line == 0)
    return;
  g_autofree char *over = many (counts[i].most + 1, counts[i].head, counts[i].item, counts[i].foot);
  assert_refused (over, strlen (over), counts[i].line, counts[i].reason);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/refused/good-is-good", test_good_is_good);
  g_test_add_func ("/refused/not-what-is-allowed", test_allowed);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/refused/", cases[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_case);
    }
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      g_autofree char *path = g_strconcat ("/refused/too-many/", counts[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_counts);
    }
  return g_test_run ();
}
