PRAGMA application_id=1685223788;
PRAGMA user_version=1;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE event (
  seq INTEGER PRIMARY KEY,
  act INTEGER NOT NULL,
  v INTEGER NOT NULL,
  kind TEXT NOT NULL,
  at INTEGER NOT NULL,
  recorded INTEGER NOT NULL,
  "by" TEXT NOT NULL,
  tag INTEGER,
  station TEXT,
  together INTEGER NOT NULL,
  target INTEGER,
  reaches INTEGER,
  body TEXT NOT NULL
) STRICT;
INSERT INTO event VALUES(1,1,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"hours","from":"2026-01-01","weekly":[[{"opens":1080,"closes":1260}],[],[],[],[],[],[]]}}');
INSERT INTO event VALUES(2,2,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,1774440000000,'{"setting":{"of":"day","date":"2026-03-24","hours":[{"opens":1080,"closes":1335}]}}');
INSERT INTO event VALUES(3,3,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,1774526400000,'{"setting":{"of":"day","date":"2026-03-25","hours":null}}');
INSERT INTO event VALUES(4,4,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,1776081600000,'{"setting":{"of":"away","from":"2026-03-30","to":"2026-04-12"}}');
INSERT INTO event VALUES(5,5,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"back","from":"2026-04-10"}}');
INSERT INTO event VALUES(6,6,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"zone","name":"Europe/Dublin"}}');
INSERT INTO event VALUES(7,7,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"hands","from":"2026-01-01","pairs":1}}');
INSERT INTO event VALUES(8,8,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"place","name":"rack","hooks":8}}');
INSERT INTO event VALUES(9,9,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"place","name":"warm box","hooks":null}}');
INSERT INTO event VALUES(10,10,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"aim","from":"2026-01-01","finishedPerWeek":3,"out":null}}');
INSERT INTO event VALUES(11,11,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"default process","name":"walker"}}');
INSERT INTO event VALUES(12,12,1,'settled',1774288800000,1774288800000,'maker',NULL,NULL,1,NULL,253402214400000,'{"setting":{"of":"default process","name":null}}');
INSERT INTO event VALUES(13,13,1,'tagged',1774288800000,1774288800000,'maker',1,NULL,1,NULL,NULL,'{"process":"walker-1","name":"lure 1","scheme":[{"colour":"ochre","minutes":10,"flashOff":5},{"colour":"black","minutes":8,"flashOff":null}],"due":null,"price":2800,"for":null,"hung":null}');
INSERT INTO event VALUES(14,14,1,'tagged',1774288800000,1774288800000,'maker',2,NULL,1,NULL,NULL,'{"process":"walker-1","name":"lure 2","scheme":[],"due":null,"price":null,"for":null,"hung":{"step":"seal","since":1774209600000}}');
INSERT INTO event VALUES(15,15,1,'tagged',1774288800000,1774288800000,'maker',3,NULL,2,NULL,NULL,'{"process":"walker-1","name":"lure 3","scheme":[],"due":null,"price":null,"for":null,"hung":null}');
INSERT INTO event VALUES(16,15,1,'tagged',1774288800000,1774288800000,'maker',4,NULL,2,NULL,NULL,'{"process":"walker-1","name":"lure 4","scheme":[],"due":null,"price":null,"for":null,"hung":null}');
INSERT INTO event VALUES(17,17,1,'changed',1774288800000,1774288800000,'maker',1,NULL,1,NULL,NULL,'{"due":"2026-04-03","for":"a friend","weight":2}');
INSERT INTO event VALUES(18,18,1,'routed',1774288860000,1774288860000,'maker',1,NULL,1,NULL,NULL,'{"why":"no ballast this time","change":{"do":"skip","step":"pour the ballast"}}');
INSERT INTO event VALUES(19,19,1,'routed',1774288860000,1774288860000,'maker',3,NULL,1,NULL,NULL,'{"why":null,"change":{"do":"put","name":"third seal","like":"seal","after":"second seal","handsOn":{"low":6,"likely":6,"high":6},"coat":{"sheetAir":{"celsius":20,"humidityPercent":50},"lowestCelsius":null,"feelFirst":false,"flashOff":0,"givesOff":[],"cautions":[],"sheet":{},"source":null,"name":"shellac","curesBy":"clock","stages":{"dry-hard":60},"windows":[]}}}');
INSERT INTO event VALUES(20,20,1,'ticked',1774288920000,1774288920000,'maker',NULL,NULL,1,NULL,NULL,'{"caution":"wood and foam dust"}');
INSERT INTO event VALUES(21,21,1,'taken',1774288980000,1774288980000,'maker',1,'bench',1,NULL,NULL,'{"step":"shape","pass":1,"part":"step","colour":null,"another":false,"overrides":[]}');
INSERT INTO event VALUES(22,22,1,'left',1774289580000,1774289580000,'maker',1,'bench',1,NULL,NULL,'{"step":"shape","pass":1,"part":"step"}');
INSERT INTO event VALUES(23,23,1,'taken',1774290780000,1774290780000,'maker',1,'bench',1,NULL,NULL,'{"step":"shape","pass":1,"part":"step","colour":null,"another":false,"overrides":[]}');
INSERT INTO event VALUES(24,24,1,'hung',1774291980000,1774291980000,'maker',1,'bench',1,NULL,NULL,'{"step":"shape","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(25,25,1,'amended',1774291980000,1774291980000,'maker',1,NULL,1,24,1774291860000,'{"target":24,"time":1774291860000}');
INSERT INTO event VALUES(26,25,1,'amended',1774291980000,1774291980000,'maker',NULL,'bench',1,24,1774291860000,'{"target":24,"time":1774291860000}');
INSERT INTO event VALUES(27,27,1,'hung',1774292460000,1774292460000,'maker',1,'bench',1,NULL,NULL,'{"step":"drill","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(28,28,1,'measured',1774292520000,1774292520000,'maker',1,NULL,1,NULL,NULL,'{"what":"wood moisture","value":8.5,"unit":"%"}');
INSERT INTO event VALUES(29,29,1,'readied',1774293720000,1774293720000,'maker',NULL,'lead pot',1,NULL,NULL,'{"setUp":"melt lead","begun":1774292520000,"ready":1774293720000,"keeps":{"way":"heat","minutes":45},"putAwayMinutes":8,"givesOff":["heat"],"overrides":[]}');
INSERT INTO event VALUES(30,30,1,'put away',1774296120000,1774296120000,'maker',NULL,'lead pot',1,NULL,NULL,'{}');
INSERT INTO event VALUES(31,31,1,'hung',1774375200000,1774375200000,'maker',1,'bench',2,NULL,NULL,'{"step":"seal","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(32,31,1,'hung',1774375200000,1774375200000,'maker',2,'bench',2,NULL,NULL,'{"step":"second seal","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(33,33,1,'moved',1774378800000,1774378800000,'maker',1,NULL,1,NULL,NULL,'{"place":"warm box"}');
INSERT INTO event VALUES(34,34,1,'touched',1774393200000,1774393200000,'maker',1,NULL,1,NULL,NULL,'{"step":"seal","pass":1,"found":"tacky"}');
INSERT INTO event VALUES(35,35,1,'touched',1774407600000,1774407600000,'maker',1,NULL,1,NULL,NULL,'{"step":"seal","pass":1,"found":"dry"}');
INSERT INTO event VALUES(36,36,1,'mended',1774411200000,1774411200000,'maker',1,NULL,1,NULL,NULL,'{"what":"level the run","minutes":10,"goOnFrom":"seal"}');
INSERT INTO event VALUES(37,37,1,'taken',1774461600000,1774461600000,'maker',1,'bench',1,NULL,NULL,'{"step":"seal","pass":2,"part":"step","colour":null,"another":false,"overrides":[{"over":"keep apart","reason":"the door stands open"}]}');
INSERT INTO event VALUES(38,38,1,'hung',1774461960000,1774461960000,'maker',1,'bench',1,NULL,NULL,'{"step":"seal","pass":2,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(39,39,1,'hung',1774479960000,1774479960000,'maker',1,'bench',1,NULL,NULL,'{"step":"second seal","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(40,40,1,'noted',1774479960000,1774479960000,'maker',NULL,NULL,1,NULL,NULL,'{"text":"three times by mistake"}');
INSERT INTO event VALUES(41,41,1,'undone',1774479960000,1774479960000,'maker',NULL,NULL,1,40,NULL,'{"target":40}');
INSERT INTO event VALUES(42,42,1,'noted',1774479960000,1774479960000,'maker',2,NULL,1,NULL,NULL,'{"text":"grain like a trout"}');
INSERT INTO event VALUES(43,43,1,'scrapped',1774483560000,1774483560000,'maker',4,NULL,1,NULL,NULL,'{"why":"split at the tail"}');
INSERT INTO event VALUES(44,44,1,'clock',1774483560000,1774483560000,'maker',NULL,NULL,1,NULL,253402214400000,'{"since":43,"minutes":7}');
INSERT INTO event VALUES(45,45,1,'readied',1774548000000,1774548000000,'maker',NULL,'spray corner',1,NULL,NULL,'{"setUp":"load ochre","begun":null,"ready":1774548000000,"keeps":{"way":"load"},"putAwayMinutes":8,"givesOff":[],"overrides":[]}');
INSERT INTO event VALUES(46,46,1,'hung',1774548600000,1774548600000,'maker',1,'spray corner',1,NULL,NULL,'{"step":"colours","pass":1,"part":"step","place":"rack","colour":"ochre","another":false,"flashOff":6,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(47,47,1,'hung',1774549800000,1774549800000,'maker',1,'spray corner',1,NULL,NULL,'{"step":"colours","pass":2,"part":"step","place":"rack","colour":"black","another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(48,48,1,'hung',1774553400000,1774553400000,'maker',1,'spray corner',1,NULL,NULL,'{"step":"first clear","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(49,49,1,'hung',1774634400000,1774634400000,'maker',1,'bench',1,NULL,NULL,'{"step":"detail","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(50,50,1,'readied',1774638000000,1774638000000,'maker',NULL,'bench',1,NULL,NULL,'{"setUp":"mix resin","begun":null,"ready":1774638000000,"keeps":{"way":"mix","minutes":30,"serves":4},"putAwayMinutes":8,"givesOff":[],"overrides":[]}');
INSERT INTO event VALUES(51,51,1,'hung',1774638480000,1774638480000,'maker',1,'bench',1,NULL,NULL,'{"step":"last clear","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":true,"overrides":[]}');
INSERT INTO event VALUES(52,52,1,'hung',1774807200000,1774807200000,'maker',1,'bench',1,NULL,NULL,'{"step":"hangers","pass":1,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(53,53,1,'hung',1774810800000,1774810800000,'maker',1,'bench',1,NULL,NULL,'{"step":"water test","pass":1,"part":"step","place":null,"colour":null,"another":false,"flashOff":null,"result":"tune","guessed":false,"overrides":[]}');
INSERT INTO event VALUES(54,54,1,'hung',1774814400000,1774814400000,'maker',1,'bench',1,NULL,NULL,'{"step":"hangers","pass":2,"part":"step","place":"rack","colour":null,"another":false,"flashOff":null,"result":null,"guessed":false,"overrides":[]}');
INSERT INTO event VALUES(55,55,1,'hung',1774818000000,1774818000000,'maker',1,'bench',1,NULL,NULL,'{"step":"water test","pass":2,"part":"step","place":null,"colour":null,"another":false,"flashOff":null,"result":"passes","guessed":false,"overrides":[]}');
INSERT INTO event VALUES(56,56,1,'gone',1774825200000,1774825200000,'maker',1,NULL,1,NULL,NULL,'{"how":"sold","price":2800,"to":"a friend"}');
CREATE TABLE process_version (
  hash TEXT PRIMARY KEY,
  definition TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO process_version VALUES('walker-1','{"name":"walker","piece":"lure","steps":[{"mayStop":true,"setUp":null,"passes":"one","coat":null,"waitsFor":null,"wait":0,"place":null,"until":null,"look":[],"givesOff":[{"what":"dust","lasts":0}],"needs":[],"ballast":null,"cautions":["wood and foam dust"],"result":null,"sheet":{},"name":"shape","station":"bench","handsOn":{"low":40,"likely":40,"high":40},"after":[]},{"mayStop":false,"setUp":null,"passes":"one","coat":null,"waitsFor":null,"wait":0,"place":null,"until":null,"look":[],"givesOff":[{"what":"dust","lasts":0}],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"drill","station":"bench","handsOn":{"low":8,"likely":8,"high":8},"after":["shape"]},{"mayStop":false,"setUp":{"do":"melt lead","takes":20,"keeps":{"way":"heat","minutes":45},"putAway":5,"cautions":["molten lead"]},"passes":"one","coat":null,"waitsFor":null,"wait":10,"place":null,"until":null,"look":[],"givesOff":[{"what":"heat","lasts":"while set up"},{"what":"lead fume","lasts":"while set up"}],"needs":[{"what":"wood moisture","atMost":10,"unit":"%"}],"ballast":null,"cautions":["molten lead"],"result":null,"sheet":{},"name":"pour the ballast","station":"lead pot","handsOn":{"low":6,"likely":6,"high":6},"after":["drill"]},{"mayStop":false,"setUp":null,"passes":"one","coat":"varnish","waitsFor":null,"wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"seal","station":"bench","handsOn":{"low":6,"likely":6,"high":6},"after":["pour the ballast"]},{"mayStop":false,"setUp":null,"passes":"one","coat":"varnish","waitsFor":null,"wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"second seal","station":"bench","handsOn":{"low":6,"likely":6,"high":6},"after":["seal"]},{"mayStop":false,"setUp":{"do":"load {colour}","takes":6,"keeps":{"way":"load"},"putAway":8,"cautions":[]},"passes":"scheme","coat":"acrylic","waitsFor":null,"wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"colours","station":"spray corner","handsOn":{"low":10,"likely":10,"high":10},"after":["second seal"]},{"mayStop":false,"setUp":{"do":"load varnish","takes":6,"keeps":{"way":"load"},"putAway":8,"cautions":[]},"passes":"one","coat":"varnish","waitsFor":null,"wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"first clear","station":"spray corner","handsOn":{"low":8,"likely":8,"high":8},"after":["colours"]},{"mayStop":false,"setUp":null,"passes":"one","coat":"acrylic","waitsFor":"dry-hard","wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"detail","station":"bench","handsOn":{"low":15,"likely":15,"high":15},"after":["first clear"]},{"mayStop":false,"setUp":{"do":"mix resin","takes":4,"keeps":{"way":"mix","minutes":30,"serves":4},"putAway":2,"cautions":[]},"passes":"one","coat":"bar-top resin","waitsFor":null,"wait":0,"place":"rack","until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"last clear","station":"bench","handsOn":{"low":8,"likely":8,"high":8},"after":["detail"]},{"mayStop":true,"setUp":null,"passes":"one","coat":null,"waitsFor":"dry-hard","wait":0,"place":null,"until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":null,"sheet":{},"name":"hangers","station":"bench","handsOn":{"low":10,"likely":10,"high":10},"after":["last clear"]},{"mayStop":false,"setUp":null,"passes":"one","coat":null,"waitsFor":null,"wait":0,"place":null,"until":null,"look":[],"givesOff":[],"needs":[],"ballast":null,"cautions":[],"result":{"passes":{"goes":"on"},"tune":{"backTo":"hangers"}},"sheet":{},"name":"water test","station":"bench","handsOn":{"low":10,"likely":10,"high":10},"after":["hangers"]}],"coats":{"varnish":{"sheetAir":{"celsius":20,"humidityPercent":50},"lowestCelsius":10,"feelFirst":false,"flashOff":0,"givesOff":[{"what":"solvent vapour","lasts":40}],"cautions":["solvent vapour"],"sheet":{},"source":null,"name":"varnish","curesBy":"solvent","stages":{"dust-free":45,"tack-free":120,"dry-hard":720},"windows":[{"opens":240,"shuts":1440,"first":null},{"opens":1440,"shuts":null,"first":{"do":"scuff","handsOn":{"low":5,"likely":5,"high":5},"givesOff":[{"what":"dust","lasts":0}],"cautions":["wood and foam dust"]}}]},"bar-top resin":{"sheetAir":{"celsius":20,"humidityPercent":50},"lowestCelsius":null,"feelFirst":false,"flashOff":0,"givesOff":[],"cautions":["epoxy"],"sheet":{},"source":null,"name":"bar-top resin","curesBy":"resin","stages":{"dust-free":180,"dry-hard":1440},"windows":[{"opens":0,"shuts":120,"first":null},{"opens":1440,"shuts":null,"first":{"do":"scuff","handsOn":{"low":5,"likely":5,"high":5},"givesOff":[{"what":"dust","lasts":0}],"cautions":["wood and foam dust"]}}]},"acrylic":{"sheetAir":{"celsius":20,"humidityPercent":50},"lowestCelsius":null,"feelFirst":false,"flashOff":5,"givesOff":[],"cautions":[],"sheet":{},"source":null,"name":"acrylic","curesBy":"water","stages":{"dust-free":10,"dry-hard":60},"windows":[{"opens":"flash-off","shuts":null,"first":null}]}},"note":null}');
CREATE TABLE piece (
  tag INTEGER PRIMARY KEY,
  out INTEGER NOT NULL,
  name TEXT NOT NULL,
  process TEXT NOT NULL,
  process_name TEXT NOT NULL,
  tagged_at INTEGER NOT NULL,
  finished_at INTEGER,
  scrapped_at INTEGER
) STRICT;
INSERT INTO piece VALUES(1,0,'lure 1','walker-1','walker',1774288800000,1774818000000,NULL);
INSERT INTO piece VALUES(2,1,'lure 2','walker-1','walker',1774288800000,NULL,NULL);
INSERT INTO piece VALUES(3,1,'lure 3','walker-1','walker',1774288800000,NULL,NULL);
INSERT INTO piece VALUES(4,0,'lure 4','walker-1','walker',1774288800000,NULL,1774483140000);
CREATE TABLE step_time (
  tag INTEGER NOT NULL,
  process TEXT NOT NULL,
  step TEXT NOT NULL,
  pass INTEGER NOT NULL,
  minutes REAL NOT NULL,
  at INTEGER NOT NULL
) STRICT;
INSERT INTO step_time VALUES(1,'walker','shape',1,28.0,1774291860000);
INSERT INTO step_time VALUES(1,'walker','seal',2,6.0,1774461960000);
CREATE TABLE derived (version INTEGER NOT NULL) STRICT;
INSERT INTO derived VALUES(1);
CREATE INDEX event_act ON event (act);
CREATE INDEX event_at ON event (at);
CREATE INDEX event_recorded ON event (recorded);
CREATE INDEX event_tag ON event (tag) WHERE tag IS NOT NULL;
CREATE INDEX event_station ON event (station) WHERE station IS NOT NULL;
CREATE INDEX event_station_kind ON event (station, kind) WHERE station IS NOT NULL;
CREATE INDEX event_target ON event (target) WHERE target IS NOT NULL;
CREATE INDEX event_reaches ON event (kind, reaches) WHERE reaches IS NOT NULL;
CREATE TRIGGER event_stays BEFORE UPDATE ON event
  BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER event_is_kept BEFORE DELETE ON event
  BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;
CREATE INDEX piece_out ON piece (tag) WHERE out = 1;
CREATE INDEX piece_tagged ON piece (tagged_at);
CREATE INDEX piece_finished ON piece (finished_at) WHERE finished_at IS NOT NULL;
CREATE INDEX piece_scrapped ON piece (scrapped_at) WHERE scrapped_at IS NOT NULL;
CREATE INDEX step_time_newest ON step_time (process, step, at, tag, pass);
CREATE INDEX step_time_tag ON step_time (tag);
COMMIT;
