/**
 * How lengths are said at a cutting table and how machines and people write them down, with what is meant. From memory
 * and common practice, no source; forms that were published stand in tests/reference/spoken-lengths.test.ts.
 *
 * A row: what is meant, a bar, and the forms with that meaning, parted by semicolons. Meant is kind, values, unit, as in
 * `5.5 in`, `5 x 7 in`, `8..10 in`, `~20 in`; a unit in brackets was not said. `!` is certain; without it the reading is less
 * than certain; `?` asks the author as well; `or 8` is another reading that must be offered, in the same unit.
 */
const rows = `
# Fractions of an inch
0.5 in!    | half an inch; half inch; one half inch; one half of an inch; half of an inch; 1/2"; ½ inch; a half inch hem; half a inch
0.25 in!   | a quarter inch; a quarter of an inch; quarter of an inch; one quarter inch; one fourth inch; a fourth of an inch; quarter-inch
0.25 in!   | 1/4 of inch; ¼-inch; a ¼" seam; quarter of a inch; .25 inches; point two five inches; a quarter inch from the edge
0.25 in!   | quarter quarter inch; a quarter a quarter inch; a quarter inch foot; sew a quarter inch seam; and a quarter inch seam
0.75 in!   | three quarter inch; three quarters of an inch; three-quarter-inch; three fourths of an inch; three fourths inch; 0.75 inch
0.125 in!  | an eighth inch; one eighth of an inch; 1/8"; eighth inch; a eighth of an inch; one eight of an inch; an eight of an inch; 1 8 of an inch
0.375 in!  | three eighths of an inch; three eighths inch; three-eighths of an inch; 3/8"; ⅜ of an inch; three 8 of an inch; 3/8s of an inch
0.625 in!  | five eighths of an inch; five eighths inch seam; 5/8in; ⅝"; 5/8ths of an inch; 5 8ths of an inch; 5 8 of an inch; five eight of an inch
0.625 in!  | five ate of an inch
0.625 (in) | five-eighths
0.875 in!  | seven eighths of an inch; seven eights of an inch
0.0625 in! | a sixteenth of an inch; one sixteenth inch
0.1875 in! | three sixteenths of an inch; three sixteens of an inch
0.3125 in! | five sixteenths of an inch; five sixteen of an inch
0.4375 in! | seven sixteenths inch
0.0313 in! | a thirty second of an inch
0.3333 in! | a third of an inch
0.6667 in! | two thirds of an inch

# With a whole number
1.5 in!    | one and a half inches; one and one half inches; an inch and a half; an inch and a half wide; an inch and half; one inch and 1/2; 1 1/2"
1.25 in!   | one and a quarter inches; one and one quarter inch; one inch and a quarter; 1 and 1/4 inches
1.75 in!   | one and three quarter inches; an inch and three quarters; inch and three quarters; 1 & 3/4 inches; 1-3/4"
1.125 in!  | an inch and an eighth; one and an eighth inch
1.375 in!  | an inch and three eighths; one and three eighths of an inch
2.5 in!    | two and a half inches; two and one half inch strips; two-and-a-half inches; two inches and a half; two and half inches; 2 and half inch
2.5 in!    | two point five inch; two two and a half inch strips; 2 1/2" inch strips; 2 1/2"-wide strips; cut four 2 1/2 inch strips; cut 1 2 1/2 inch strip; 2½"
2.25 in!   | two and a quarter inch binding; 2-1/4"; 2 1/4 inch
2.125 in!  | two and a eighth inches
2.625 in!  | two and five eights inches
3.375 in!  | three inches and three eighths; 3 and 3/8 inches
3.5 in!    | three point five inches; three and a half of an inch
4.875 in!  | four and seven eighths inches; 4 and 7/8 inches
5.5 in!    | five five and a half inches; five and a half inch
6.875 in!  | 6 and 7/8 inches; 6 7/8"; 6⅞"; 6-7/8 inches
9.1875 in! | nine and three sixteenths inches
22.5 in!   | twenty two and a half inches; twenty-two and a half inches
108.5 in!  | a hundred and eight and a half inches
108 in!    | a hundred and eight inches
110 in!    | one hundred and ten inches; one hundred ten inches
4.25 in!   | 4.25"; four point two five inches
1.5 (in)   | one and half; one and a half
2.625 (in) | two and five eights; 2 5/8
4.625 (in) | four and five eighths
7.5 (in)   | seven and a half
12.5 (in)  | cut it to 12 and a half
0.375 (in) | 3 8ths
0.875 (in) | seven eights

# Whole inches, and what stands around them
1 in!  | an inch; one inch; a inch; an inch from the edge; add an inch to each side; a full inch; no more than an inch; an inch for the seam
2 in!  | two inches; add two inches to the width; at least two inches; mark every two inches; two inches in from the side; sew for two inches
2 in!  | to two inches; 2 in from the edge
3 in!  | up to three inches; three inches down from the top
4 in!  | four inches for the strap; for four inches
5 in!  | five inches to the right; trim to five inches; 5 inches inches; 5"; a 5 inch charm pack
6 in!  | six inch inches; 6" inches
7 in!  | a seven inch zip; a 7" zipper; two 7 inch zips
8 in!  | eight inch zip; eight inches
14 in! | a 14 inch zipper; a fourteen inch zip
58 in! | a 58 inch wide fabric
60 in! | sixty inch white cotton
45 in! | forty five inches wide; 45" wide; fourty five inches

# Strokes, blanks and signs that were lost
0.25 in or 4           | 1 4 inch; 1 4 inch seam
0.5 in or 2            | 1 2 inch hem
0.625 in or 8          | 5 8 inch seam; five eight inch seam
0.375 in or 8          | 3 8 inch hem; three eight inch
0.125 in or 8          | an eight inch seam
8 in or 0.125          | an eight inch zip; one eight inch zip; one 8 inch zip
8 x 8 in or 0.375      | cut 3 8 inch squares
4 x 4 in or 0.75       | three 4 inch squares
16 in or 0.0625        | one 16 inch zip
2.5 in                 | 2 1 2 inches
1.75 in                | 1 3 4 inch
4.25 x 6.5 in          | 4 1 4 by 6 1 2 inches
2.375 in               | two and three eight inches
2.5 in or 12 ?         | 2 12 inches
2.5 x 2.5 in or 12 ?   | cut 2 12 inch squares
1.75 in ?              | 1 34 inch
1.25 in ?              | 1 and 14 inches
3.375 in ?             | 3 and 38 inches
5.625 in ?             | 5 and 58 inches
6.5 x 6.5 in ?         | 6 and 12 inch squares
0.625 in or 58 ?       | a 58 inch seam allowance; 58 of an inch
0.375 in or 38 ?       | a 38 inch seam
0.25 in or 14 ?        | 14 inch seam allowance
0.5 in or 12 ?         | 12 inch seam
0.75 in ?              | 34 of an inch
0.125 in ?             | 18 of an inch
1.5 in ?               | 11/2 inches
2.25 in ?              | 21/4 inches
10.5 in ?              | 101/2 inches
3.5 x 5.5 in ?         | 31/2 by 51/2 inches
2 in ?                 | 2 and inches
3 in ?                 | three and a inch
5 in ?                 | 5 \ufffd inches; 5 and ? inches; 5 [ ] inches
1 in ?                 | 1 __ inches
0.5 in ?               | and a half inches wide
5.5 in                 | five and and a half inches
0.625 (in)             | five eight

# By
5 x 7 in!         | five by seven inches; 5 x 7 inches; 5" x 7"; 5 inches by 7 inches; five inches by seven; five buy seven inches; trim it to 5 by 7 inches
5 x 7.5 in!       | 5 by 7 and a half inches
6.5 x 6.5 in!     | six and a half by six and a half inch squares
6 x 6 in!         | six inches square; a six inch square; six inch squares; 6" squares
5 x 5 in!         | three five inch squares; cut two 5 inch squares
4 x 4 in!         | two 4 inch squares
3 x 3 in!         | cut one three inch square
10 x 10 in!       | cut 2 10 inch squares
2.5 x 2.5 in!     | two and a half inch squares
12.5 x 12.5 in!   | twelve and a half inch square
14.5 x 14.5 in!   | 14 and a half by 14 and a half inches
12 x 12 x 4 in!   | twelve by twelve by four inches
4 x 6 in!         | 4 inches wide by 6 inches tall; four inches wide and six inches long
0.5 x 1 in!       | half inch by one inch
1.5 x 2.5 in!     | 1 1/2 by 2 1/2 inches; 1 1/2" x 2 1/2"
3.5 x 5 in!       | 3 1/2 in. by 5 in.; 3 1/2 inch by 5 inch
10 x 12 in!       | cut two 10 by 12 inch rectangles
0.5 x 1.2222 yd!  | half a yard by 44 inches
5 x 7 (in)        | 5 by 7; 5x7; five by seven
10.5 x 8 (in)     | ten and a half by eight
4 x 6 (in)        | 4 wide by 6 tall
18 x 22 (in)      | 18 wide and 22 long
5.25 x 3.25 (in)  | 5 1/4 by 3 and a quarter
10 x 10 (in)      | ten by ten block
2.5 (in)          | 2 1/2 by width of fabric; 2 1/2 by the width of the fabric
2.5 in!           | two and a half inches by the width of fabric

# From and to
5..6 in!       | five to six inches; five or six inches; from five to six inches
8..10 in!      | 8 to 10 inches; 8-10 inches; 8 – 10 inches; eight or ten inches; between 8 and 10 inches; between 8 inches and 10 inches; ten to eight inches
1..1.5 in!     | an inch to an inch and a half; one to one and a half inches
0.25..0.375 in!| a quarter to three eighths of an inch; three eighths to a quarter inch; leave 1/4 to 3/8 inch; leave 1/4" to 3/8"
0.25..0.375 in | 1/4 to 3/8 inch; 1/4" to 3/8"
0.25..0.5 in!  | a quarter to a half inch
0.5..1 in!     | half an inch to an inch
2..2.5 in!     | two to two and a half inches
2.5..3 in!     | two and a half to three inches; 3 to 2 1/2 inches
1..2 in!       | one or two inches
2..3 m!        | two to three metres
1..2 yd!       | a yard or two
5..10 mm!      | five to ten millimetres; 5-10 mm
3..4 mm!       | three or four mil
1..2 cm!       | a centimetre or two; between one and two centimetres
4..5 in        | 4 maybe 5 inches

# About
~5 in!    | about five inches; around 5 inches; five inches or so; 5ish inches; five-ish inches
~10 cm!   | roughly 10 centimetres; about ten centimetres
~12 in!   | approx 12 inches; 12 inches roughly; 12 inches approximately
~1 in!    | nearly an inch; just over an inch; an inch-ish; an inch give or take; a good inch; a smidge less than an inch
~2 in!    | almost two inches
~0.5 in!  | just under half an inch; a generous half inch
~0.25 in! | a bit more than a quarter inch; scant 1/4"; a fat quarter inch; a hair over a quarter inch
~4 in!    | four or so inches
~3 yd!    | approximately 3 yards
~2 in ?   | a couple of inches; a couple inches
~3 in ?   | a few inches
~3 cm ?   | a few centimetres
~2 yd ?   | a couple of yards
~0.25 (in)| a scant quarter seam
0.25 (in) | a quarter foot

# Yards, feet and goods that are sold by name
1 yd!      | a yard of fabric; one yard; a yard
2 yd!      | two yards
0.5 yd!    | half yard; half a yard of lining; a half yard
0.25 yd!   | quarter yard; a quarter of a yard; a quarter yard cut
0.3333 yd! | third of a yard; a third of a yard; one third yard
0.6667 yd! | two thirds of a yard
0.125 yd!  | an eighth of a yard
0.375 yd!  | three eighths of a yard
0.625 yd!  | five eighths yard
1.25 yd!   | a yard and a quarter; one and a quarter yards
1.375 yd!  | one and three eighths yards
2.5 yd!    | 2 1/2 yards; two and a half yards
1.125 yd!  | a yard and an eighth
1.3333 yd! | a yard and twelve inches
0.6111 yd! | half a yard and four inches
1.5 yd!    | a yard and a half
1.5 yd     | a yard in a half
3 ft!      | three feet
1 ft!      | a foot long
6 ft       | six foot table
5.5 ft!    | 5 ft 6
5.5 ft     | five foot six
1.5 ft!    | a foot and a half
~18 x 22 (in)! | two fat quarters
~9 x 22 (in)!  | a fat eighth

# Metric
1 cm!     | one centimetre; a centimetre; 1 cm seam allowance; a one centimetre seam allowance
0.5 cm!   | half a centimetre; half a centimeter; point five of a centimetre
1.5 cm!   | a centimetre and a half; one and a half centimetres; one point five centimetres; 1.5 cm; 1,5 cm; 1.5cm
0.7 cm!   | zero point seven centimetres; nought point seven centimetres
12.5 cm!  | twelve and a half centimetres
20 cm!    | twenty centimetres
30 cm!    | thirty centi
140 cm!   | 140 cm wide; a hundred and forty centimetres
6 mm!     | 6mm; 6 mm; six millimetres; six mill; six mils
7 mm!     | seven mil seam
1 mm!     | a millimetre; one mil
15 mm!    | fifteen mil; fifteen millimetre seam allowance
35 mm!    | thirty-five millimetres
105 mm!   | one hundred and five millimetres
105 mm    | one oh five millimetres
150 mm!   | a hundred and fifty millimetres
365 mm!   | three hundred and sixty five mil
120 mm    | one twenty millimetres
250 mm    | two fifty mil
3 mm!     | a three millimetre stitch
2.5 mm!   | a stitch length of 2.5 mm
1 m!      | a metre; a metre of fabric; 1 m of cotton
0.5 m!    | half a metre; a half metre
0.6 m!    | half a metre and ten centimetres
0.25 m!   | quarter of a metre; a quarter metre
0.75 m!   | three quarters of a metre
1.5 m!    | one metre fifty
1.1 m!    | a metre ten; one metre and ten centimetres
1.2 m!    | one point two metres
1.25 m!   | one and a quarter metres
2.5 m!    | two and a half metres
1.4 m!    | 1.4 m wide
2.4 m!    | 2 metres 40
15 x 18 cm!   | 15 by 18 centimetres
20 x 30 cm!   | 20 by 30 cm; 20cm x 30cm; 20cm by 30
21 x 29.7 cm! | 21 by 29.7 centimetres
10 x 10 cm!   | ten centimetres square; a ten centimetre square; 10 cm squares
1 x 0.5 m!    | 1 metre by 50 centimetres
2..3 mm!      | 2 to 3 mm
10 cm!        | 10 cm cm

# Twice in two units, twice over, and put right
0.5 in!; 12 mm!  | half an inch or twelve millimetres
0.25 in!; 6 mm!  | a quarter inch that is six millimetres; 1/4 inch (6 mm) seam
6 mm!; 0.25 in!  | 6 mm 1/4 inch
15 cm!; 6 in!    | 15 centimetres or 6 inches
5 in!; 13 cm!    | 5 inches 13 centimetres
1 yd!; 44 in!    | 1 yard of 44 inch white
1 in; 1.5 in!    | an inch an inch and a half
5 in; 6 in!      | five inches sorry six inches; not five inches but six inches
2 in; 3 in!      | two inches no wait three inches
5 in!            | four i mean five inches
1.5 in!          | one and a one and a half inches

# Little words that sound like numbers, and joints that were misheard
2 in ?    | to inches wide; too inches; cut it to inches
2.5 in ?  | to and a half inches; too and a half inch strips
3 in ?    | tree inches
4 in ?    | for inches; fore inches
4.25 in ? | for and a quarter inches
8 in ?    | ate inches
1 in ?    | won inch
1.5 in ?  | won and a half inches
0.5 in ?  | have an inch
0.25 in ? | a corner inch seam allowance
1.5 in    | one in a half inches; one end a half inches; an inch in a half
2.5 in    | two in a half inches
2.25 in   | two in 1/4 inches
3.5 in    | three an a half inches
4.5 in    | 4 in a half inches
5.375 in  | 5 in 3/8 inches
1.25 in   | one an a quarter inches; an inch in a quarter
0.5 in    | half and inch
0.625 in  | five eighths and inch

# No length: counts and names
none | two strips; cut four; cut two of the lining; three layers; ten pins; one more time; both halves; the second half; half of the strips
none | a quarter of the class; half of them; a dozen; one and two; one two three; one or two pins; two to three pins; a couple of pins
none | a few stitches; three or four stitches; two to the left; one for the lining and two for the outer; four rows of five; one at a time
none | one to one; fifty fifty; three ply; 300 gsm; a ten ounce canvas; 4 way stretch; 100 percent cotton; 20 students; the 1920s
none | 4 in total; 2 in each corner; put 3 in the pocket; 3 in one go; 2 in 1; one in front of the other; 2 in pink; 4 in my bag
none | step two; steps two and three; step one in the pattern; number four; row three; lesson 2; figure 3; page 12; version 2.5; part two

# No length: needles, stitches, settings
none | a size 14 needle; an 80/12 needle; needle size 90/14; a ninety fourteen needle; size 16 jeans needle; forty weight thread; 50 wt thread
none | a size 11/12; stitch length of 2.5; stitch length to three; a stitch length of three and a half; set it to 2.5; lengthen your stitch to four
none | zigzag width three and a half; a 2.5 stitch; tension at four; tension four and a half; speed at half

# No length: times, prices, temperatures
none | ten minutes; two and a half hours; a quarter of an hour; three quarters of an hour; a minute and a half; at half past four; quarter to five
none | at ten to five; an hour and a half; five past two; half a minute; half a second; one thirty; 1/2 hour; 1/4 hour; three days; in a second
none | twelve dollars; $5; $2.50; twelve dollars a yard; $12 a yard; three pounds a metre; ten percent; half price; two for one; 99 cents
none | 180 degrees; a hundred and fifty degrees; 45 degrees; a 45 degree angle; iron on two; iron at three dots; 1/2 cup of water; 1/2 teaspoon

# No length: folds, shapes and shares
none | half square triangle; quarter square triangles; fold in half; fold it in quarters; fold into thirds; fold it in half and in half again
none | a half hitch; a nine patch; a quarter turn; three quarter sleeve; half way down; a half circle; quarter circle; two thirds of the way down
none | two and a half times; one and a half times the width; one and a half times as long; half the width; a third of the length
none | half the seam allowance; quarter mark; three quarter mark; a three by three grid; two and a half times as much

# No length: units without a number
none | inch by inch; every inch of it; a tape measure in inches; the inch side; a yard stick; a yard sale; a metre stick; yards and yards of ribbon
none | my feet; a walking foot; the presser foot; from centimetres to inches; an inch ruler; the foot down; five six of an inch

# In whole sentences
2.5 in!; 44 in! | cut your binding strips two and a half inches by the full 44 inch width
0.25 in!   | stitch all the way around with a quarter inch seam allowance backstitching at both ends; so line up the edge of the fabric with the quarter inch mark
5 x 7 in!  | you should now have a piece that measures five inches by seven inches; trim this block down to five by seven inches okay
1 in!      | fold the top edge down one inch and press; we are going to fold down by an inch; move it over an inch
3 in!      | leave a three inch gap at the bottom for turning
0.5 in!; 1 in! | fold down half an inch then another inch; turn under 1/2 inch and then 1 inch
0.25 in!; 0.25 in! | turn it a quarter inch and then another quarter inch
12 in!     | you need one zip that is at least 12 inches long; cut the strap to twelve inches; 12 inches of elastic; take 12 in of elastic
18 in!; 1 in! | eighteen inches of one inch webbing
1 cm!      | sew with a one centimetre seam; fold over by one centimetre and press
1.5 in!    | press the hem up by an inch and a half; your strip is one and a half inches wide now; one-and-a-half inches
0.125 in!  | top stitch an eighth of an inch away from the fold; top stitch 1/8 inch from the edge; edge stitch at 1/8"
0.625 in!  | the pattern has a five eighths of an inch seam allowance
~0.125 in! | roughly an eighth of an inch from the edge; stay about an eighth of an inch in from the edge
~6 in!     | leave about a six inch gap; leave about six inches open
2 in!; 3 in! | measure two inches down and three inches across; 2 inches from the top and 3 inches from the left
3 yd!; 1 yd! | you need three yards of the outer and one yard of the lining
0.5 yd!; 0.25 yd! | half a yard of the print and a quarter yard of interfacing
9 x 6 in!  | the finished size is nine by six inches; it finishes at 9" x 6"; 9 inches by 6; 9 inch by 6 inch
4 x 4 in!  | a four-inch square; a 4" square; four inches by four inches
8.5 x 11 in! | a sheet of eight and a half by eleven inch paper; 8.5" x 11"; 8 1/2 x 11 inches
0.375 in!  | the loop is three eighths of an inch wide; trim the seam to three-eighths inch; three-eighths-inch
7 mm!      | seven millimetres; sew seven mil from the edge; 7 mm from the edge; 7mm seam
90 x 60 cm!| a piece ninety by sixty centimetres; 90 cm x 60 cm; 90 cm by 60 cm
30.5 cm!   | thirty point five centimetres; thirty and a half centimetres; 30.5cm
2 m!       | two metres; two meters of ribbon; 2 m of ribbon
10 mm!     | ten millimetres; 10 millimeters; a ten millimetre hem
5.25 in!   | five and a quarter inches; 5 1/4"; 5-1/4 inches; five and one fourth inches; five and a fourth inches
3.125 in!  | three and an eighth inches; three and one eighth inch; 3⅛"; 3 1/8 in wide
7.75 in!   | seven and three quarter inches; seven and three fourths inches; 7.75"; 7 3/4 inch
1.625 in!  | an inch and five eighths; one and five eighths inches; 1⅝ inches
0.5..0.75 in! | half to three quarters of an inch; trim to between a half and three quarters of an inch
1..2 mm!   | a mil or two; one to two millimetres; 1 - 2 mm
6..8 in!   | 6 to 8"; six to eight inch
0.25 in    | 1 4 in seam
# None
none | press for ten to fifteen seconds; sew the next two sides; take your two pieces; the first two and the last two; one half and the other half
none | cut eight of these; you will need 12 of them; four corners; quarter the circle; mark the quarters; pin at the quarter points; three out of four
none | it is 20 to 9; turn the dial to 3; step 2 is to press; repeat for the other three; for the next one; two of the five; do not sew in one go
none | thread the needle with two strands; a number 8 crochet thread; a 12 weight thread; a 60 wt thread; a microtex 70; size ninety; a size 90
none | five star; four eyed button; wash at 40; wash at thirty degrees; 30 degrees; in half an hour; three and a half stars; four and a half hours
none | it costs five pounds fifty; eight dollars fifty; buy two get one free; a third off; a quarter of the price; at 7 in the evening; in 5 minutes
none | half a dozen pins; half the pins; half of this; half open; half done; half a cup; a quarter cup; half past; two and a half year old

# Settings and sizes, articles and figures
4 in!   | a 4 inch gap; a 4 inch strip; a 4" gap
16 in!  | a 16 inch strap; a 16" zip
2 in!   | a 2 inch strip; take two inches off the length; take off another two inches; the depth is 2 inches
8 in!   | an 8 inch zip; an 8" zip; take 8 inches of cord
0.125 in! | an 8 of an inch
0.25 in or 4 | 1-4 inch seam
9 in!   | the finished size is 9 inches; the size is nine inches across
10 x 8 in! | the finished size is ten inches by eight inches; the panel is 10 by 8 inches; panel size is 10 by 8 inches
1..2 mm!   | 1-2 mm; 1–2 mm; one or two mil
1..2 in!   | 1-2 inches; 1 – 2 inches; another inch or two
1 in!   | another inch; fold another inch
1 m!    | another metre
none    | take two; take one from the pile; size two is next; the size is ten; step 8 is next; another one; another half; the next size is small
0.5 in! | stitch half an inch from the edge; zigzag half an inch from the edge; keep the needle half an inch away
0.125 in! | stitch an eighth of an inch from the edge
0.375 in! | stitch at three eighths of an inch; stitch three eighths of an inch in
0.125 in ? | eighths of an inch
4 in!; 0.25 in! | four inches in a quarter inch seam

# More of the same
5.5 x 3 in!  | five and a half inch by three
0.375 in!    | 3 8 of an inch
0.625 (in)   | five eights
2.75 (in)    | two and three quarter
11.5 cm!     | eleven and a half centimetres; 11,5 cm
6 mm!        | six mil
0.5 yd!      | half a yard
0.75 yd!     | three quarters of a yard
~18 x 22 (in)! | a fat quarter
7 x 9 (in)   | seven by nine
1.25 in!     | an inch and a quarter
1.5 in!      | inch and a half
1..2 in!     | an inch or two
~1 in!       | an inch or so
~0.25 in!    | a scant quarter inch
4..5 in!     | between four and five inches
1.2 m!       | a metre twenty
1.5 m!       | a metre and a half
0.25 m!      | a quarter of a metre
150 x 210 mm | one fifty by two ten mil
405 mm       | four oh five millimetres
2.75 in!     | two point seven five inches
5.5 ft!      | 5 ft 6 in
12 in!       | two 12 inch zips
2.5 in ?     | 2 and 12 in strips
4.875 in ?   | 47/8 inches
0.25 in ?    | a 14 inch seam
2 in ?       | two and a inch
0.5 in ?     | you have an inch left
4 in ?       | for inches wide
10 x 7 in!   | the panel ten by seven inches
0.5 in!; 0.25 in! | a half inch hem and a quarter inch seam
3.5 (in); 4.5 in! | three and a half no sorry four and a half inches
none | two rectangles; panel three; panel three by the window; step four; one second; two minutes; two and a half minutes; half an hour
none | a quarter past three; ten to eight; size fourteen; needle ninety; a needle 90/14; stitch length two and a half; fold it in half
none | the other half; in 2019 we made two of them; cut 2 in the lining; sew three in a row; one by one; a four by four grid
none | half square triangles

2 in!     | 2 more inches; two more inches; two whole inches
0.125 in! | an eight of an inch seam
15 cm!    | fifteen more centimetres
8 cm!     | an 8 cm gap
8 cm or 1.8 | one 8 cm gap
8 cm or 3.8 | 3 8 cm

# Talk around lengths
1 in!     | give yourself an inch of room; an inch all the way round; one inch on all four sides; an inch past the end
0.5 in!   | pull it half an inch past the edge; half an inch at either end; a half-inch; a half of an inch; half-inch seam; it is half an inch too long
0.25 in!  | just a quarter of an inch; the usual quarter inch; sewn at a quarter inch; a quarter inch on each of the four sides; quarter inch seams
2.5 in!   | two and a half inches on both ends; a 2 1/2 inch wide strip; cut it at two and a half inches; a two and a half inch roll; jelly roll strips are 2 1/2"
1.5 in!   | fold one and a half inches to the wrong side; a strap one and a half inches wide; one and a half inch webbing; 1.5" webbing
3 in!; 3 in! | three inches up and three inches over; three inches on this side and three inches on that side
4.5 x 9.5 in! | four and a half inches by nine and a half inches; 4 1/2 by 9 1/2 inches; 4 1/2" by 9 1/2"; 4-1/2" x 9-1/2"; four and a half by nine and a half inch
20 x 20 in! | a twenty inch square cushion pad; 20 inches square; 20" x 20"; twenty inches by twenty inches
0.5 in!; 0.25 in! | trim half an inch down to a quarter inch; not half an inch a quarter inch
8 in!; 10 in! | eight inches for the small one and ten inches for the big one
9 in!     | nine inches; it should measure nine inches; nine inches from raw edge to raw edge; you should get 9 inches exactly; 9 whole inches
36 in!    | thirty six inches; thirty-six inch
11.75 in! | eleven and three quarters inches; 11 3/4"; eleven and three quarter inch; 11.75 inches; eleven inches and three quarters
1 yd!     | exactly one yard; 1 yard of the main fabric; you will need a yard
1.75 yd!  | one and three quarter yards; 1 3/4 yards; a yard and three quarters
0.25 yd!  | a quarter yard of batting; 1/4 yard; ¼ yd
8 cm!     | eight centimetres; 8 centimeters; an eight centimetre gap; 8 cms; leave eight centimetres open
2.5 cm!   | two and a half centimetres; two point five centimetres; 2.5 cm; 2,5 cm; 2½ cm
4 mm!     | four millimetres; a four mil gap; 4mm from the edge
45 cm!    | a forty five centimetre zip; 45 centimetres; 45cm zip
110 x 50 cm! | one hundred and ten by fifty centimetres; 110 cm by 50 cm; 110 x 50 cm
8..9 in!  | eight to nine inches; somewhere between 8 and 9 inches
2..4 in!  | two to four inches; between two and four inches; 2" to 4"
1.5..2 in!| one and a half to two inches; an inch and a half to two inches; 1 1/2 to 2 inches
~7 in!    | around about seven inches; seven inches give or take; seven inches ish; about a seven inch length
~1.5 in!  | about an inch and a half; roughly one and a half inches; an inch and a half or so; just over an inch and a half
4 in ?    | the strap is for inches wide; about for inches
2 in ?    | it is to inches long; cut too inches off
5.5 x 7.5 (in) | five and a half by seven and a half; 5 1/2 by 7 1/2; 5½ x 7½
3 x 12 (in)    | three by twelve; 3 by 12; 3x12; a piece three by twelve
6.25 (in) | six and a quarter; 6 1/4; six and one quarter
none | this one and that one; the two of them together; one by the other; press one way then the other; in two halves; the two short ends; all four sides
none | sew one to the other; for a moment; a quarter past; at quarter past four; a third time; the fifth pleat; the third of these; one half hitch
none | on the first of may; the twenty first; one foot off the pedal; foot pedal; a foot note; every yard counts; one stitch in from the end

# Folds one after the other, enumerations, and what was said a moment ago
0.25 in!; 0.25 (in) | a quarter inch and a quarter
0.25 (in); 0.5 (in) | fold a quarter and then a half and press
0.25 in!; 0.375 (in) | sew two rows one a quarter inch from the edge and one three eighths
7 x 7 in!; 7 (in)   | seven inches square so it should be seven each way
42..44 in!          | 42 inches wide or 44
0.75 (in)           | fold the long edge in three quarters to the centre
16 in or 0.0625     | stick a sixteen inch pillow in it
18..27 (in)         | gather it from 27 down to 18
~1 in!              | pin it every inch or so
none                | cut two long strips
7 in!               | seven inches of tape and seven pins
30 in!; 40 (in)     | a waist of thirty inches and hips of forty
0.125 in!           | sew the top one and the bottom one an eighth of an inch from the edge
18 x 14 in!; 18 (in) | the front is eighteen inches by fourteen and the strip is as wide as the panel eighteen so check it
230 x 150 mm!       | finished size 230 by 150 mil
280 (in)            | it goes up to 280 wide cut the zip longer as well
`;

/** One form, what it means, and another reading that must be offered, both as the rows have it. */
export type SpokenForm = { said: string; meant: string; other?: string };

/** Every form of the table. */
export const spokenForms: readonly SpokenForm[] = rows
  .split('\n')
  .filter((row) => row.includes('|'))
  .flatMap((row) => {
    const [cell, forms] = row.split('|').map((text) => text.trim());
    const other = / or (?<value>[\d.]+)/u.exec(cell!)?.groups?.['value'];
    const meant = cell!.replace(/ or [\d.]+/u, '');
    return forms!.split(/; ?/u).map((said): SpokenForm => ({ said, meant, ...(other !== undefined && { other }) }));
  });
